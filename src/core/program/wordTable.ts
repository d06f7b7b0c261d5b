import type { Word } from '../codes/index.ts';

/** How a controller looks up a word, packed into a number with channel 0 as the highest bit. */
export type WordTable =
  /** `positions[packed word]`, or `null` for a word that the disc never shows. n = 2^bits */
  | { readonly kind: 'dense'; readonly positions: readonly (number | null)[] }
  /** Legal packed words in rising order, with the position of each. n = positions */
  | { readonly kind: 'sorted'; readonly words: readonly number[]; readonly positions: readonly number[] };

/**
 * A word as a number, channel 0 in the highest place.
 *
 * @param levelCount - One bit a channel for words of two levels, two bits for three. [-]
 * @returns 0 to 2^bits - 1. [-]
 */
export function packedWord(word: Word, levelCount: 2 | 3): number {
  return parseInt(word, levelCount === 2 ? 2 : 4);
}

/** Bytes of one stored position: 255 is kept for "none". [byte] */
export function positionBytes(positions: number): 1 | 2 {
  return positions < 255 ? 1 : 2;
}

/**
 * The smaller of the two tables that decode words; the dense one when both are equal, since it is faster.
 *
 * @param words - At most 16 channels of two levels, or 8 of three, so that a word fits two bytes; position by position.
 * @param channels - Channels of each word. [-], whole
 * @returns Dense with an entry for every number, or sorted with as many as there are words.
 * @check src/core/program/wordTable.test.ts
 */
export function wordTableFor(words: readonly Word[], channels: number, levelCount: 2 | 3 = 2): WordTable {
  const all = (levelCount === 2 ? 2 : 4) ** channels;
  const bytes = positionBytes(words.length);
  if (all * bytes > words.length * (2 + bytes)) {
    const rows = words.map((word, position) => ({ packed: packedWord(word, levelCount), position }));
    rows.sort((a, b) => a.packed - b.packed);
    return { kind: 'sorted', words: rows.map((r) => r.packed), positions: rows.map((r) => r.position) };
  }
  const positions = new Array<number | null>(all).fill(null);
  for (const [position, word] of words.entries()) positions[packedWord(word, levelCount)] = position;
  return { kind: 'dense', positions };
}
