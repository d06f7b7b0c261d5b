import type { AvrChip } from './avrChip.ts';

/** Voltages of a 16-way multiplexer that the program selects with four pins. [V] */
export function multiplexerOn(chip: AvrChip, select: readonly string[], converterInput: number) {
  const volts = new Array<number>(16).fill(0);
  let before = 0;
  chip.beforeConversion = () => {
    const chosen = select.reduce((sum, pin, line) => sum + (chip.isHigh(pin) ? 1 << line : 0), 0);
    // The wire still holds half of what it held before: only a second conversion is right.
    const now = volts[chosen]!;
    chip.setVolts(converterInput, (now + before) / 2);
    before = now;
  };
  return { setVolts: (input: number, value: number): void => void (volts[input] = value) };
}

/** Shift registers with parallel inputs in a row: input i comes out i-th. */
export function registersOn(chip: AvrChip, pins: { load: string; clock: string; data: string }) {
  const inputs = new Array<boolean>(16).fill(false);
  let held = [...inputs];
  let wasClock = false;
  let isWorking = false;
  chip.onPins = () => {
    if (isWorking) return; // setting a pin calls back
    isWorking = true;
    const clock = chip.isHigh(pins.clock);
    if (!chip.isHigh(pins.load)) held = [...inputs];
    else if (clock && !wasClock) held = [...held.slice(1), false];
    wasClock = clock;
    chip.setDigital(pins.data, held[0]!);
    isWorking = false;
  };
  return { set: (input: number, high: boolean): void => void (inputs[input] = high) };
}
