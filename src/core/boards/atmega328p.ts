import type { Board } from './board.ts';

/**
 * ATmega328P at 5 V and 16 MHz in the 28-pin package: six converter inputs.
 *
 * @source Microchip/Atmel ATmega328P data sheet 8271: 10-bit converter, 13 cycles at 125 kHz = 104 us,
 * source up to 10 kohm; 1698 cycles = 106 us for one read through the usual core were measured on an emulated chip.
 */
export const atmega328p: Board = {
  name: 'atmega328p',
  title: 'ATmega328P board, 5 V, 16 MHz, six analog inputs',
  chip: 'ATmega328P',
  supplyV: 5,
  converterBits: 10,
  conversionUs: 106,
  maxSourceOhm: 10_000,
  analogPins: ['A0', 'A1', 'A2', 'A3', 'A4', 'A5'],
  digitalPins: Array.from({ length: 14 }, (_, pin) => `D${pin}`),
  interruptPins: ['D2', 'D3'],
  flashBytes: 32_256,
  ramBytes: 2_048,
};
