import { loadMicroPython } from '@micropython/micropython-webassembly-pyscript/micropython.mjs';
import type { Feed } from './hostBuild.ts';

/** A board made of tables: converter inputs, levels, time, and what the program printed. */
const fakeMachine = `
import sys

class FakePin:
    IN = 0
    OUT = 1
    PULL_UP = 2
    IRQ_FALLING = 1
    IRQ_RISING = 2
    levels = {}
    handlers = {}
    on_change = None
    def __init__(self, number, mode=0, pull=None, value=None):
        self.number = number
        if value is not None:
            FakePin.levels[number] = value
    def value(self, level=None):
        if level is None:
            return FakePin.levels.get(self.number, 1)
        FakePin.levels[self.number] = level
        if FakePin.on_change:
            FakePin.on_change(self.number, level)
    def irq(self, handler, trigger):
        FakePin.handlers[self.number] = handler

class FakeADC:
    ATTN_11DB = 3
    counts = {}
    read_hook = None
    def __init__(self, pin, atten=None):
        self.number = pin.number
    def read_u16(self):
        if FakeADC.read_hook:
            return FakeADC.read_hook(self.number)
        count = FakeADC.counts.get(self.number, 0)
        return (count << 4) | (count >> 8)

class FakeWDT:
    fed = 0
    def __init__(self, timeout):
        pass
    def feed(self):
        FakeWDT.fed += 1
        on_loop()

class Module:
    pass

class Stop(Exception):
    pass

machine = Module()
machine.Pin, machine.ADC, machine.WDT = FakePin, FakeADC, FakeWDT
machine.PWRON_RESET, machine.WDT_RESET = 1, 3
machine.reset_cause = lambda: 1
machine.disable_irq = lambda: 0
machine.enable_irq = lambda state: None
machine.idle = lambda: None
machine.lightsleep = lambda ms: sleep_ms(ms)
now_us = 0
def sleep_ms(ms):
    global now_us
    now_us += 1000 * int(ms)
def sleep_us(us):
    global now_us
    now_us += us
time = Module()
time.ticks_ms = lambda: (now_us // 1000) & 0x3FFFFFFF
time.ticks_us = lambda: now_us & 0x3FFFFFFF
time.ticks_diff = lambda a, b: ((a - b + 0x20000000) & 0x3FFFFFFF) - 0x20000000
time.sleep_us, time.sleep_ms = sleep_us, sleep_ms
typed = ""
class Poll:
    def register(self, stream, what):
        pass
    def poll(self, ms):
        return bool(typed)
select = Module()
select.poll, select.POLLIN = Poll, 1
class Stdin:
    def read(self, many):
        global typed
        letter, typed = typed[0], typed[1:]
        return letter
fake_sys = Module()
fake_sys.stdin = Stdin()
for name, module in (("machine", machine), ("time", time), ("select", select)):
    sys.modules[name] = module
def on_loop():
    pass
`;

/** A MicroPython with a fake board under it and the program loaded, but not started. */
export async function boardWith(program: string) {
  const python = await loadMicroPython({ stdout: () => {}, linebuffer: true });
  python.runPython(fakeMachine);
  // The program begins with imports; its streams are ours, and it does not start by itself here.
  const loaded = program
    .replace('\nimport sys\n', '\nsys = fake_sys\n')
    .replace('__name__ == "__main__"', 'False');
  python.runPython(loaded);
  return {
    run: (code: string): void => void python.runPython(code),
    get: (name: string): string => String(python.globals.get(name)),
  };
}

/** Feeds counts straight to the judging part. @returns its lines. */
export async function micropythonLines(
  program: string,
  writer: string,
  feed: readonly Feed[],
): Promise<string[]> {
  const board = await boardWith(program);
  const rows = feed.map(
    ({ ms, pulses, edges, counts }) => `(${ms},${pulses},${edges},(${counts.join(',')},))`,
  );
  board.run(`
vane = Vane()
answers = []
for ms, pulses, edges, counts in (${rows.join(',')},):
    vane.counts = list(counts)
    vane.pulses, vane.edges = pulses, edges
    vane.judge(ms)
    answers.append(vane.${writer}(ms))
answered = "\\n".join(answers)`);
  return board.get('answered').split('\n');
}
