import { beforeAll, describe, expect, it } from 'vitest';
import { programFor } from '../../src/core/program/index.ts';
import { parseJsonLine, parsePack, parseSentence } from '../../src/core/record/index.ts';
import { buildAvr, type AvrProgram } from '../support/avrBuild.ts';
import { AvrChip } from '../support/avrChip.ts';
import {
  cupsOn,
  DARK_COUNTS,
  jettyHead,
  jettyInstrument,
  lineOf,
  LIT_COUNTS,
  setCounts,
} from '../support/avrVane.ts';
import { boardWith } from '../support/micropython.ts';

const POSITIONS = 32;
const INTERVAL_MS = 1100;

// The vane stands long enough at each heading for the reads every 10 ms to weigh it by its time.
const headingOf = (k: number): number => (360 - ((k + 0.5) * 360) / POSITIONS) % 360;

function show(chip: AvrChip, k: number): void {
  const word = (k ^ (k >> 1)).toString(2).padStart(5, '0');
  for (const [channel, bit] of [...word].entries())
    setCounts(chip, channel, bit === '1' ? LIT_COUNTS : DARK_COUNTS);
}

/** Direction and length of the mean of unit vectors, worked out with the library's own sines. */
function meanOf(parts: readonly { k: number; ms: number }[]): { bearing: number; agreement: number } {
  let north = 0;
  let east = 0;
  for (const { k, ms } of parts) {
    north += ms * Math.cos((headingOf(k) * Math.PI) / 180);
    east += ms * Math.sin((headingOf(k) * Math.PI) / 180);
  }
  const all = parts.reduce((sum, { ms }) => sum + ms, 0);
  return {
    bearing: ((Math.atan2(east, north) * 180) / Math.PI + 360) % 360,
    agreement: Math.hypot(north, east) / all,
  };
}

const apart = (a: number, b: number): number => Math.abs(((a - b + 540) % 360) - 180);

describe('between lines more than a second apart', () => {
  let program: AvrProgram;
  beforeAll(async () => {
    const instrument = jettyInstrument({ lineIntervalMs: INTERVAL_MS, turnRateDegPerS: 3600 });
    program = await buildAvr(programFor(instrument, jettyHead(instrument)).source);
  });

  it.each([
    ['one heading all the time', [{ k: 7, ms: 1100 }]],
    [
      'either side of north',
      [
        { k: 1, ms: 550 },
        { k: 31, ms: 550 },
      ],
    ],
    [
      'a swing, longer on one side',
      [
        { k: 4, ms: 300 },
        { k: 5, ms: 500 },
        { k: 6, ms: 300 },
      ],
    ],
    [
      'half a turn apart, three to one',
      [
        { k: 0, ms: 825 },
        { k: 16, ms: 275 },
      ],
    ],
  ] as const)('the chip gives the mean of unit vectors: %s', (_, parts) => {
    const chip = new AvrChip(program.hex);
    show(chip, parts[0].k);
    chip.runUntil(() => chip.lines.length > 1, 1300); // the first line, and the mean begins anew
    for (const { k, ms } of parts) {
      show(chip, k);
      if (ms < INTERVAL_MS) chip.runMs(ms);
    }
    chip.runUntil(() => chip.lines.length > 2, 1300);
    const { average } = lineOf(chip.lines[1]!);
    const expected = meanOf(parts);
    // One read of 110 is a hundredth of the time: a few of them may fall on the other side of a change.
    expect(apart(average!.headingDeg!, expected.bearing)).toBeLessThan(1);
    expect(Math.abs(average!.agreement! - expected.agreement)).toBeLessThan(0.02);
    if (parts.length === 1) {
      expect(apart(average!.headingDeg!, headingOf(7))).toBeLessThan(0.03);
      expect(average!.agreement).toBe(1);
    }
  });

  it('the gust is the most pulses in any 3 s', () => {
    const chip = new AvrChip(program.hex);
    show(chip, 3);
    chip.runUntil(() => chip.lines.length > 1, 1300);
    // Ten pulses within 0.4 s: every window of 3 s that holds them holds ten.
    for (let i = 0; i < 10; i++) {
      chip.after(40_000 * i + 1000, () => chip.setDigital(2, false));
      chip.after(40_000 * i + 20_000, () => chip.setDigital(2, true));
    }
    chip.runUntil(() => chip.lines.length > 2, 1300);
    expect(lineOf(chip.lines[1]!).cups).toMatchObject({ pulses: 10, gustPulses: 10 });
  });
});

describe('other formats from the chip', () => {
  async function chipWith(wishes: Parameters<typeof jettyInstrument>[0]): Promise<AvrChip> {
    const instrument = jettyInstrument(wishes);
    return new AvrChip((await buildAvr(programFor(instrument, jettyHead(instrument)).source)).hex);
  }

  it('JSON lines carry what the chip reads', async () => {
    const chip = await chipWith({ format: 'json-lines', lineIntervalMs: 10, northOffsetDeg: 20 });
    show(chip, 9);
    chip.runMs(40);
    const parsed = parseJsonLine(chip.lines.at(-2)!);
    expect(parsed.ok && parsed.line.headingDeg).toBeCloseTo(headingOf(9) + 20, 1);
    expect(parsed.ok && parsed.line.counts).toHaveLength(5);
  });

  it.each(['nmea-mwd', 'nmea-mwv'] as const)('%s sentences carry direction and speed', async (format) => {
    const cups = { ...cupsOn('D2'), runPerPulseM: 0.25, startSpeedMPerS: 0.3 };
    const chip = await chipWith({ format, lineIntervalMs: 100, cups });
    show(chip, 9);
    chip.runUntil(() => chip.lines.length > 1, 200);
    for (let i = 0; i < 2; i++) {
      chip.after(30_000 * i + 5000, () => chip.setDigital(2, false));
      chip.after(30_000 * i + 20_000, () => chip.setDigital(2, true));
    }
    chip.runUntil(() => chip.lines.length > 2, 200);
    const parsed = parseSentence(chip.lines[1]!);
    if (!parsed.ok) throw new Error(parsed.refusal.code);
    expect(apart(parsed.sentence.directionDeg!, headingOf(9))).toBeLessThanOrEqual(0.05 + 0.005);
    // Two pulses of 0.25 m in 0.1 s, and what the fitted line adds: 5.3 m/s.
    expect(Math.abs(parsed.sentence.speedMPerS! - 5.3)).toBeLessThanOrEqual(0.1);
    expect(parsed.sentence.isValid).toBe(true);
  });

  it('a direction that cannot be read is blank in a sentence, and a recorded turn still sends the counts', async () => {
    const chip = await chipWith({ format: 'nmea-mwv', positions: 20, lineIntervalMs: 20, cups: null });
    for (let input = 0; input < 5; input++) setCounts(chip, input, DARK_COUNTS);
    chip.runMs(45);
    expect(chip.lines[0]).toBe('$WIMWV,,R,,M,V*37\r');
    chip.say('turn');
    const first = chip.lines.length;
    chip.runMs(20);
    expect(lineOf(chip.lines[first]!).flags).toContain('turnRecording');
  });
});

describe('a MicroPython board', () => {
  const PINS = ['GP26', 'GP27', 'GP28'];
  function boardText(wishes: Parameters<typeof jettyInstrument>[0]): string {
    const instrument = jettyInstrument({ positions: 8, board: 'rp2040', channelPins: PINS, ...wishes });
    return programFor(instrument, jettyHead(instrument)).source;
  }

  /** Runs the whole program on the fake board for so many loops, with something done at each. */
  async function linesOf(
    wishes: Parameters<typeof jettyInstrument>[0],
    loops: number,
    atLoop = '',
  ): Promise<string[]> {
    const board = await boardWith(boardText(wishes));
    board.run(`
written = []
loops = 0
def on_loop():
    global loops, typed
    loops += 1
    sleep_ms(1)
${atLoop.replace(/^/gm, '    ')}
    if loops > ${loops}:
        raise Stop
try:
    run(written.append)
except Stop:
    pass
answered = "\\n".join(written)`);
    return board.get('answered').split('\n');
  }

  it('reads its converter, counts its cups and sends lines and status', async () => {
    const atLoop = `for channel in range(3):
    FakeADC.counts[26 + channel] = 3000 if (2 >> (2 - channel)) & 1 else 300
if loops in (20, 40):
    FakePin.levels[2] = 0
    FakePin.handlers[2](FakePin(2))
if loops in (30, 50):
    FakePin.levels[2] = 1
    FakePin.handlers[2](FakePin(2))`;
    const lines = await linesOf({ cups: cupsOn('GP2'), lineIntervalMs: 20 }, 100, atLoop);
    expect(lines[0]).toMatch(/^vws1 /);
    const last = lineOf(lines.at(-1)!);
    expect(last.counts).toEqual([300, 3000, 300]);
    expect(last.word).toBe('010'); // Gray: position 3 of 8
    expect(last.headingDeg).toBeCloseTo(360 - 3.5 * 45, 9);
    expect(last.cups).toMatchObject({ pulses: 2, edges: 4 });
  });

  it('obeys commands and keeps what they set', async () => {
    const atLoop = `if loops == 5:
    typed = "north 12.5\\n"
if loops == 10:
    typed = "thresholds 1 100 200\\nnorth 400\\n"`;
    const lines = await linesOf({ cups: null, lineIntervalMs: 1000 }, 30, atLoop);
    const statuses = lines.filter((text) => text.startsWith('vws1'));
    expect(statuses).toHaveLength(4);
    expect(statuses[1]).toContain(' k 1250 ');
    expect(statuses[3]).toMatch(/ k 1250 \d+:\d+,100:200,/);
  });

  it('sends SenML packs', async () => {
    const lines = await linesOf({ cups: cupsOn('GP2'), format: 'senml', lineIntervalMs: 20 }, 50);
    const parsed = parsePack(lines.at(-1)!);
    if (!parsed.ok) throw new Error(parsed.refusal.code);
    const names = parsed.records.map(({ name, unit }) => `${name} ${unit}`);
    expect(names).toContain('Boathouse-jetty:dir deg');
    expect(names).toContain('Boathouse-jetty:pulses count');
  });
});
