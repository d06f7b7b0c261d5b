import type { Board } from './board.ts';

/**
 * ATmega328P at 5 V and 16 MHz in the 28-pin package: six converter inputs.
 *
 * @source Microchip/Atmel ATmega328P data sheet 8271: 10-bit converter, 13 cycles at 125 kHz = 104 us, source up to
 * 10 kohm, 40 mA a pin and 200 mA together as absolute limits; 1698 cycles = 106 us for one read through the usual core,
 * 5 us for a pin and 20 us for a character of a line were measured on an emulated chip. Currents: values from memory
 * of the chip's typical curves, with 5 mA for a regulator and a lamp on the board; measure your own.
 */
export const atmega328p: Board = {
  name: 'atmega328p',
  title: 'ATmega328P board, 5 V, 16 MHz, six analog inputs',
  chip: 'ATmega328P',
  language: 'sketch',
  supplyV: 5,
  converterBits: 10,
  conversionUs: 106,
  converterTopShare: 1,
  converterErrorCounts: 2, // value from memory of the data sheet
  sampling: { capacitorPf: 14, ohm: 100_000, us: 12 }, // 14 pF behind 1 to 100 kohm, 1.5 cycles of 125 kHz
  maxSourceOhm: 10_000,
  inputLeakageUa: 1, // value from memory of the data sheet
  digitalReadUs: 5,
  lineCharUs: 21,
  analogPins: ['A0', 'A1', 'A2', 'A3', 'A4', 'A5'],
  converterInputs: [0, 1, 2, 3, 4, 5],
  digitalPins: Array.from({ length: 14 }, (_, pin) => `D${pin}`),
  interruptPins: ['D2', 'D3'],
  serialPins: ['D0', 'D1'],
  pinMa: 20,
  pinsMa: 200,
  flashBytes: 32_256,
  ramBytes: 2_048,
  eepromBytes: 1_024,
  currentMa: { awake: 15, idle: 9, deep: 5.1 },
};
