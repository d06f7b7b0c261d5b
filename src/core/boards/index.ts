import { atmega328p } from './atmega328p.ts';
import type { Board } from './board.ts';

export type { Board } from './board.ts';

/** Every board the tool knows; adding a board is adding a row. */
export const boards: readonly Board[] = [atmega328p];

/** The board of that name, or `null` when the tool knows none. */
export function boardNamed(name: string): Board | null {
  return boards.find((board) => board.name === name) ?? null;
}
