import { LINE_TAG, NONE, NOT_READ, STATUS_TAG } from '../../record/index.ts';
import type { ProgramFacts } from '../facts.ts';

const textLine = `
    def text_line(self, now_ms):
        heading, half, flags = self.notice_heading()
        mean, agreement = self.mean() if AVERAGES else (None, None)
        shown = lambda value: "${NOT_READ}" if value is None else str(value)
        fields = (
            "${LINE_TAG}",
            str(self.line_number),
            str(now_ms),
            ",".join(str(count) for count in self.counts),
            self.word_text(self.word),
            shown(heading),
            shown(half),
            flags or "${NONE}",
            shown(mean) if AVERAGES else "${NONE}",
            shown(agreement) if AVERAGES else "${NONE}",
            str(self.pulses) if HAS_CUPS else "${NONE}",
            str(self.edges) if HAS_CUPS else "${NONE}",
            str(self.gust) if HAS_CUPS and AVERAGES else "${NONE}",
        )
        self.forget_noticed()
        return checked(" ".join(fields))

    def status_line(self):
        pairs = ",".join("%d:%d" % pair for pair in zip(self.low, self.high_at))
        kept = "k" if self.kept else "${NONE}"
        fields = ("${STATUS_TAG}", TABLE, self.start_reason, kept, str(self.north), pairs, self.word_text(self.stuck()))
        return checked(" ".join(fields))`;

const jsonLine = `

    def json_line(self, now_ms):
        heading, half, flags = self.notice_heading()
        mean, agreement = self.mean() if AVERAGES else (None, None)
        angle = lambda value: "null" if value is None else "%d.%02d" % (value // 100, value % 100)
        share = "null" if agreement is None else "%d.%03d" % (agreement // 1000, agreement % 1000)
        average = '{"headingDeg":%s,"agreement":%s}' % (angle(mean), share) if AVERAGES else "null"
        gust = str(self.gust) if AVERAGES else "null"
        cups = '{"pulses":%d,"edges":%d,"gustPulses":%s}' % (self.pulses, self.edges, gust) if HAS_CUPS else "null"
        body = (
            '{"vw":1,"lineNumber":%d,"sinceStartMs":%d,"counts":[%s],"word":"%s","headingDeg":%s,"halfWidthDeg":%s,'
            '"flags":"%s","average":%s,"cups":%s'
        ) % (
            self.line_number, now_ms, ",".join(str(count) for count in self.counts), self.word_text(self.word),
            angle(heading), angle(half), flags, average, cups,
        )
        self.forget_noticed()
        return '%s,"check":"%04X"}' % (body, check_of(0xFFFF, body.encode()))`;

const speed = `

    def speed(self, now_ms):
        """Wind speed since the sentence before in centimetres a second, None for cups not calibrated."""
        if RUN_PER_PULSE_MM is None:
            return None
        many = (self.pulses - self.last_pulses) & 0xFFFFFFFF
        elapsed = (now_ms - self.last_speed_ms) & 0xFFFFFFFF
        self.last_pulses = self.pulses
        self.last_speed_ms = now_ms
        if many == 0 or elapsed == 0:
            return 0
        return min(99990, (many * RUN_PER_PULSE_MM * 100 + elapsed // 2) // elapsed + START_CM_PER_S)`;

const sentence = (isMwd: boolean): string => `

    def sentence(self, now_ms):
        heading, _, _ = self.notice_heading()
        speed = self.speed(now_ms)
        tenths = lambda value: "" if value is None else "%d.%d" % (value // 10, value % 10)
        direction = None if heading is None else (heading + 5) // 10 % 3600
        metres = None if speed is None else (speed + 5) // 10
${
  isMwd
    ? `        knots = None if speed is None else (speed * 19438 + 50000) // 100000
        content = "WIMWD,%s,T,,M,%s,N,%s,M" % (tenths(direction), tenths(knots), tenths(metres))`
    : `        content = "WIMWV,%s,R,%s,M,%s" % (tenths(direction), tenths(metres), "V" if heading is None else "A")`
}
        check = 0
        for byte in content.encode():
            check ^= byte
        self.forget_noticed()
        return "$%s*%02X\\r" % (content, check)`;

const pack = (baseName: string): string => `

    def pack(self, now_ms):
        heading, half, flags = self.notice_heading()
        speed = self.speed(now_ms)
        rows = []
        if heading is not None:
            rows.append('"n":"dir","u":"deg","v":%d.%02d' % (heading // 100, heading % 100))
            rows.append('"n":"halfwidth","u":"deg","v":%d.%02d' % (half // 100, half % 100))
        if speed is not None:
            rows.append('"n":"speed","u":"m/s","v":%d.%02d' % (speed // 100, speed % 100))
        if HAS_CUPS:
            rows.append('"n":"pulses","u":"count","v":%d' % self.pulses)
            rows.append('"n":"edges","u":"count","v":%d' % self.edges)
        rows.append('"n":"flags","vs":"%s"' % flags)
        rows[0] = '"bn":"${baseName}",' + rows[0]
        self.forget_noticed()
        return "[%s]" % ",".join("{%s}" % row for row in rows)`;

/** How each format is written, and the name of its function. */
export function linesText(facts: ProgramFacts, baseName: string): string {
  const own = {
    text: '',
    'json-lines': jsonLine,
    'nmea-mwd': speed + sentence(true),
    'nmea-mwv': speed + sentence(false),
    senml: speed + pack(baseName),
  }[facts.format];
  return `${textLine}${own}`;
}

/** Name of the function that writes a line of the format. */
export const writerNames: Record<ProgramFacts['format'], string> = {
  text: 'text_line',
  'json-lines': 'json_line',
  'nmea-mwd': 'sentence',
  'nmea-mwv': 'sentence',
  senml: 'pack',
};
