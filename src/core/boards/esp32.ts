import type { Board } from './board.ts';

/** Pins with a number between two others, as the board's maker prints them. */
const pins = (...numbers: readonly number[]): readonly string[] => numbers.map((number) => `IO${number}`);

/**
 * ESP32 class board with MicroPython: a network of its own, and a converter that only follows up to 2.45 V.
 *
 * Only the first of its two converters is used: the second one stops while the radio is on.
 *
 * @source ESP32 data sheet and converter guide: 12 bits, 150 to 2450 mV at 11 dB, first converter on GPIO32 to GPIO39.
 * GPIO34 to GPIO39 only read. Values from memory: times through the interpreter, source resistance, 20 mA a pin,
 * currents of the whole board with the radio off; the radio adds over 100 mA while it sends.
 */
export const esp32: Board = {
  name: 'esp32',
  title: 'ESP32 board, 3.3 V, six analog inputs, network, MicroPython',
  chip: 'ESP32',
  language: 'micropython',
  supplyV: 3.3,
  converterBits: 12,
  conversionUs: 80,
  converterTopShare: 0.74,
  converterErrorCounts: 24, // value from memory: 12 counts of curve and as much of reference after the usual correction
  sampling: { capacitorPf: 10, ohm: 1_000, us: 2 }, // values from memory
  maxSourceOhm: 10_000,
  inputLeakageUa: 0.05, // value from memory of the data sheet
  digitalReadUs: 5,
  lineCharUs: 10,
  analogPins: pins(36, 39, 34, 35, 32, 33),
  converterInputs: [0, 3, 6, 7, 4, 5],
  digitalPins: pins(4, 13, 14, 16, 17, 18, 19, 21, 22, 23, 25, 26, 27, 32, 33),
  interruptPins: pins(27, 26, 25, 4, 13, 14, 16, 17, 18, 19, 21, 22, 23),
  serialPins: pins(1, 3),
  pinMa: 20,
  pinsMa: 200,
  flashBytes: 1_048_576,
  ramBytes: 131_072,
  eepromBytes: 0,
  currentMa: { awake: 55, idle: 35, deep: 5 },
};
