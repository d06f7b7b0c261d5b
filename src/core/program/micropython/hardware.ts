import type { ProgramFacts } from '../facts.ts';
import { busPin } from '../wiring/wiring.ts';
import { writerNames } from './lines.ts';

/** Number of a pin or input: `GP26` and `IO34` are what the board's own library counts by. */
const pinNumber = (pin: string): number => Number(pin.replace(/\D/g, ''));

/** Readings of MicroPython have 16 bits whatever the converter has. [bit] */
const READ_BITS = 16;

function adcText({ wiring }: ProgramFacts, pin: string): string {
  const attenuation = wiring.board.name === 'esp32' ? ', atten=machine.ADC.ATTN_11DB' : '';
  return `machine.ADC(machine.Pin(${pinNumber(pin)})${attenuation})`;
}

/** One read of the wire gives the levels of all gates: the word whose counts are nearest. */
function ladderText(facts: ProgramFacts): string {
  const { wiring, readTwice, ladder } = facts;
  const shift = READ_BITS - wiring.board.converterBits;
  return `        self.common = ${adcText(facts, busPin(wiring, 'common')!)}
        self.inputs = (${wiring.channelPins.map(pinNumber).join(', ')},)
        self.words = (${ladder!.words.join(', ')},)
        self.begins = (${ladder!.fromCounts.join(', ')},)

    def before_channels(self):${readTwice ? '\n        self.common.read_u16()  # thrown away: the ladder is weak' : ''}
        now = self.common.read_u16() >> ${shift}
        low, high = 0, len(self.words) - 1
        while low < high:
            middle = (low + high) // 2
            if now >= self.begins[middle]:
                low = middle + 1
            else:
                high = middle
        self.legs = self.words[low]

    def read_channel(self, channel):
        return (self.legs >> self.inputs[channel]) & 1`;
}

function inputText(facts: ProgramFacts): string {
  const { wiring, readTwice } = facts;
  const shift = READ_BITS - wiring.board.converterBits;
  const pins = wiring.channelPins;
  const bus = (role: Parameters<typeof busPin>[1]): number => pinNumber(busPin(wiring, role)!);
  switch (wiring.input) {
    case 'direct':
      return `        self.inputs = (${pins.map((pin) => adcText(facts, pin)).join(', ')},)

    def before_channels(self):
        pass

    def read_channel(self, channel):${readTwice ? '\n        self.inputs[channel].read_u16()  # thrown away: the sensor is weak' : ''}
        return self.inputs[channel].read_u16() >> ${shift}`;
    case 'digital':
      return `        self.inputs = tuple(machine.Pin(pin, machine.Pin.IN) for pin in (${pins.map(pinNumber).join(', ')},))

    def before_channels(self):
        pass

    def read_channel(self, channel):
        return self.inputs[channel].value()`;
    case 'multiplexer':
      return `        self.select = tuple(machine.Pin(pin, machine.Pin.OUT) for pin in (${([0, 1, 2, 3] as const).map((line) => bus(`select ${line}`)).join(', ')}))
        self.common = ${adcText(facts, busPin(wiring, 'common')!)}
        self.inputs = (${pins.map(pinNumber).join(', ')},)

    def before_channels(self):
        pass

    def read_channel(self, channel):
        for line in range(4):
            self.select[line].value((self.inputs[channel] >> line) & 1)
        self.common.read_u16()  # thrown away: the wire still holds the voltage of the channel before
        return self.common.read_u16() >> ${shift}`;
    case 'ladder':
      return ladderText(facts);
    case 'shift-register':
      return `        self.load = machine.Pin(${bus('load')}, machine.Pin.OUT, value=1)
        self.clock = machine.Pin(${bus('clock')}, machine.Pin.OUT, value=0)
        self.data = machine.Pin(${bus('data')}, machine.Pin.IN)
        self.inputs = (${pins.map(pinNumber).join(', ')},)

    def before_channels(self):
        self.load.value(0)
        self.load.value(1)
        self.shifted = 0
        for i in range(${8 * Math.ceil((Math.max(...pins.map(pinNumber)) + 1) / 8)}):
            if self.data.value():
                self.shifted |= 1 << i
            self.clock.value(1)
            self.clock.value(0)

    def read_channel(self, channel):
        return (self.shifted >> self.inputs[channel]) & 1`;
  }
}

const steadyText = `
    def read(self, vane):
        self.before_channels()
        for channel in range(CHANNELS):
            vane.counts[channel] = self.read_channel(channel)`;

function pulsedText({ settleUs, lightRaises: isRise }: ProgramFacts): string {
  return `
    def read(self, vane):
        """Once without and once with the lights: daylight is in both, and in their difference no more."""
        time.sleep_us(${settleUs})
        self.before_channels()
        ambients = [self.read_channel(channel) for channel in range(CHANNELS)]
        self.lights.value(1)
        time.sleep_us(${settleUs})
        self.before_channels()
        vane.drowned = False
        for channel in range(CHANNELS):
            lit = self.read_channel(channel)
            vane.counts[channel] = max(0, ${isRise ? 'lit - ambients[channel]' : 'ambients[channel] - lit'})
            room = ${isRise ? 'COUNTS_MOST - ambients[channel]' : 'ambients[channel]'}
            if room < vane.high_at[channel]:
                vane.drowned = True
        self.lights.value(0)`;
}

function cupsText({ cups }: ProgramFacts): string {
  if (!cups) return '';
  return `

class Cups:
    """A level of the switch counts only after a quiet time without any edge, when it closes and when it opens."""

    def __init__(self):
        self.pin = machine.Pin(${pinNumber(cups.pin)}, machine.Pin.IN, machine.Pin.PULL_UP)
        self.pulses = 0
        self.edges = 0
        self.level = self.accepted = self.pin.value()
        self.edge_us = time.ticks_us()
        self.pin.irq(self.on_edge, machine.Pin.IRQ_FALLING | machine.Pin.IRQ_RISING)

    def accept(self, now_us):
        if self.level == self.accepted or time.ticks_diff(now_us, self.edge_us) < ${cups.quietUs}:
            return
        self.accepted = self.level
        if self.accepted == 0:
            self.pulses = (self.pulses + 1) & 0xFFFFFFFF

    def on_edge(self, pin):
        now_us = time.ticks_us()
        self.accept(now_us)
        self.edges = (self.edges + 1) & 0xFFFFFFFF
        self.edge_us = now_us
        self.level = pin.value()

    def watch(self):
        state = machine.disable_irq()
        self.accept(time.ticks_us())
        machine.enable_irq(state)
`;
}

const keepingText = `
COPIES = ("vane-a.txt", "vane-b.txt")


def keep_settings(vane):
    """Two copies, written in turn: when the supply fails while one is written, the other is still whole."""
    vane.turn = (vane.turn + 1) & 0xFFFF
    values = [vane.turn, vane.north] + vane.low + vane.high_at
    body = "%s %d %s" % (TABLE, PROGRAM, " ".join(str(value) for value in values))
    with open(COPIES[vane.turn % 2], "w") as copy:
        copy.write(checked(body))
    vane.kept = True


def recall_settings(vane):
    vane.turn = 0
    for name in COPIES:
        try:
            with open(name) as copy:
                text = copy.read()
        except OSError:
            continue
        body = text[:-5]
        fields = body.split(" ")
        if checked(body) != text or fields[:2] != [TABLE, str(PROGRAM)] or len(fields) != 4 + 2 * CHANNELS:
            continue
        turn, vane_north = int(fields[2]), int(fields[3])
        if vane.kept and (turn - vane.turn) & 0xFFFF >= 0x8000:
            continue
        vane.turn, vane.north = turn, vane_north
        vane.low = [int(field) for field in fields[4:4 + CHANNELS]]
        vane.high_at = [int(field) for field in fields[4 + CHANNELS:]]
        vane.kept = True


def forget_settings(vane):
    vane.take_program_settings()
    for name in COPIES:
        try:
            os.remove(name)
        except OSError:
            pass


def whole(text):
    return int(text) if text and len(text) <= 5 and all(letter in "0123456789" for letter in text) else None


def take_north(vane, text):
    degrees, point, decimals = text.partition(".")
    places = whole(decimals) if point else 0
    if whole(degrees) is None or places is None or len(decimals) > 2 or int(degrees) >= 360:
        return
    vane.north = int(degrees) * 100 + (places * 10 if len(decimals) == 1 else places)
    keep_settings(vane)


def take_thresholds(vane, texts):
    values = [whole(text) for text in texts]
    if len(values) != 3 or None in values:
        return
    channel, low, high = values
    if channel < CHANNELS and low < high <= COUNTS_MOST:
        vane.low[channel] = low
        vane.high_at[channel] = high
        keep_settings(vane)


def obey(vane, command):
    """Does what one line asks for; what it does not understand changes nothing."""
    words = command.split(" ")
    if command == "turn":
        vane.begin_turn()
    elif command == "stop":
        vane.end_turn()
    elif command == "forget":
        forget_settings(vane)
    elif words[0] == "north" and len(words) == 2:
        take_north(vane, words[1])
    elif words[0] == "thresholds":
        take_thresholds(vane, words[1:])
`;

const restTexts = {
  awake: '        pass',
  idle: '        machine.idle()',
  deep: '        if not vane.recording:\n            machine.lightsleep(max(0, LINE_INTERVAL_MS - ((now - last_line) & 0xFFFFFFFF)))',
} as const;

const clockText = `class Clock:
    """Milliseconds since the start in 32 bits; the board's own count starts again sooner."""

    def __init__(self):
        self.now = 0
        self.ticks = time.ticks_ms()

    def read(self):
        ticks = time.ticks_ms()
        self.now = (self.now + time.ticks_diff(ticks, self.ticks)) & 0xFFFFFFFF
        self.ticks = ticks
        return self.now


class Gust:
    """Most pulses in any 3 s, looked at each quarter of a second."""

    def __init__(self):
        self.parts = [0] * 12
        self.at = 0
        self.ms = 0

    def watch(self, vane, now):
        while (now - self.ms) & 0xFFFFFFFF >= 250:
            self.ms = (self.ms + 250) & 0xFFFFFFFF
            vane.gust = max(vane.gust, (vane.pulses - self.parts[self.at]) & 0xFFFFFFFF)
            self.parts[self.at] = vane.pulses
            self.at = (self.at + 1) % 12


def start_reason():
    cause = machine.reset_cause()
    if cause == machine.WDT_RESET:
        return "w"
    return "p" if cause == machine.PWRON_RESET else "u"`;

/** Reading, cups, settings, commands and the main loop on the board. */
export function hardwareText(facts: ProgramFacts): string {
  const lights = busPin(facts.wiring, 'lights');
  const writer = writerNames[facts.format];
  return `class Head:
    """Pins of channels, chips and lights."""

    def __init__(self):
${lights === null ? '' : `        self.lights = machine.Pin(${pinNumber(lights)}, machine.Pin.OUT, value=0)\n`}${inputText(facts)}
${facts.settleUs === null ? steadyText : pulsedText(facts)}

${cupsText(facts)}${keepingText}

${clockText}


def run(write=print):
    vane, head, clock, gust = Vane(), Head(), Clock(), Gust()
    cups = ${facts.cups ? 'Cups()' : 'None'}
    recall_settings(vane)
    vane.start_reason = start_reason()
    watchdog = machine.WDT(timeout=8000)
    poll = select.poll()
    poll.register(sys.stdin, select.POLLIN)
    command = ""
    turn_began = last_line = 0
    write(vane.status_line())
    while True:
        watchdog.feed()
        head.read(vane)
        now = clock.read()
        vane.judge(now)
        if cups is not None:
            cups.watch()
            vane.pulses, vane.edges = cups.pulses, cups.edges
        if AVERAGES:
            vane.add_to_mean(now)
            gust.watch(vane, now)
        while poll.poll(0):
            letter = sys.stdin.read(1)
            if letter != "\\n":
                command = (command + letter)[:64]
                continue
            was_recording = vane.recording
            if len(command) < 32:
                obey(vane, command.rstrip("\\r"))
            if vane.recording and not was_recording:
                turn_began = now
            command = ""
            write(vane.status_line())
        if vane.recording and (now - turn_began) & 0xFFFFFFFF >= 600000:
            vane.end_turn()
        if vane.recording or (now - last_line) & 0xFFFFFFFF >= LINE_INTERVAL_MS:
            last_line = now if vane.recording else (last_line + LINE_INTERVAL_MS) & 0xFFFFFFFF
            write(vane.text_line(now) if vane.recording else vane.${writer}(now))
        elif vane.position is None:
            vane.illegal_before = True
${restTexts[facts.sleep]}`;
}
