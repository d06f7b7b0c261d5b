import { atmega328p } from './atmega328p.ts';
import { atmega32u4 } from './atmega32u4.ts';
import type { Board } from './board.ts';
import { esp32 } from './esp32.ts';
import { rp2040 } from './rp2040.ts';

export type { Board } from './board.ts';

/** Every board the tool knows; adding a board is adding a row. */
export const boards: readonly Board[] = [atmega328p, atmega32u4, rp2040, esp32];

/** The board of that name, or `null` when the tool knows none. */
export function boardNamed(name: string): Board | null {
  return boards.find((board) => board.name === name) ?? null;
}
