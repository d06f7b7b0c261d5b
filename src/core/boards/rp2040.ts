import type { Board } from './board.ts';

/**
 * RP2040 class board with MicroPython: fast, but only three converter inputs reach its pins.
 *
 * @source RP2040 data sheet: 12-bit converter, 96 cycles of 48 MHz, four outside inputs GPIO26 to GPIO29, of which the
 * common board keeps one for itself; 50 mA for all pins. Values from memory: time of one read, of a pin and of a
 * character through the interpreter, source resistance, 12 mA a pin, currents of the whole board.
 */
export const rp2040: Board = {
  name: 'rp2040',
  title: 'RP2040 board, 3.3 V, three analog inputs, MicroPython',
  chip: 'RP2040',
  language: 'micropython',
  supplyV: 3.3,
  converterBits: 12,
  conversionUs: 20,
  converterTopShare: 1,
  converterErrorCounts: 9, // measured: 7.9 counts of curve, 8.9 between neighbours
  sampling: { capacitorPf: 1, ohm: 100_000, us: 0.2 }, // values from memory
  maxSourceOhm: 10_000,
  inputLeakageUa: 1, // value from memory of the data sheet
  digitalReadUs: 5,
  lineCharUs: 10,
  analogPins: ['GP26', 'GP27', 'GP28'],
  converterInputs: [0, 1, 2],
  digitalPins: Array.from({ length: 23 }, (_, pin) => `GP${pin}`),
  interruptPins: Array.from({ length: 21 }, (_, pin) => `GP${pin + 2}`),
  serialPins: ['GP0', 'GP1'],
  pinMa: 12,
  pinsMa: 50,
  flashBytes: 1_048_576,
  ramBytes: 262_144,
  eepromBytes: 0,
  currentMa: { awake: 25, idle: 18, deep: 1.5 },
};
