import type { Board } from './board.ts';

/**
 * ATmega32U4 at 5 V and 16 MHz: USB on the chip, and converter inputs in an order of their own.
 *
 * Lines leave through its serial pins, so that they reach far and USB stays free for loading programs.
 *
 * @source Microchip/Atmel ATmega32U4 data sheet 7766: 10-bit converter, inputs 0, 1, 4 to 7 on port F, INT0 to INT3 and
 * INT6, 2.5 kB of memory; the order on the pins is that of the usual board. Currents: values from memory, as for the
 * ATmega328P; the USB part draws more.
 */
export const atmega32u4: Board = {
  name: 'atmega32u4',
  title: 'ATmega32U4 board, 5 V, 16 MHz, six analog inputs, USB',
  chip: 'ATmega32U4',
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
  converterInputs: [7, 6, 5, 4, 1, 0],
  digitalPins: Array.from({ length: 14 }, (_, pin) => `D${pin}`),
  interruptPins: ['D3', 'D2', 'D7'],
  serialPins: ['D0', 'D1'],
  pinMa: 20,
  pinsMa: 200,
  flashBytes: 28_672,
  ramBytes: 2_560,
  eepromBytes: 1_024,
  currentMa: { awake: 30, idle: 18, deep: 5.3 },
};
