import type { CodeTable, Word } from '../codes/index.ts';

/** How a controller looks up a word, packed into a number with channel 0 as the highest bit. */
export type WordTable =
  /** `positions[packed word]`, or `null` for a word that the code never shows. n = 2^channels */
  | { readonly kind: 'dense'; readonly positions: readonly (number | null)[] }
  /** Legal packed words in rising order, with the position of each. n = positions of the code */
  | { readonly kind: 'sorted'; readonly words: readonly number[]; readonly positions: readonly number[] };

/** A word of two levels as a number, channel 0 the highest bit. [-] */
export function packedWord(word: Word): number {
  return parseInt(word, 2);
}

/** Bytes of one stored position: 255 is kept for "none". [byte] */
export function positionBytes(positions: number): 1 | 2 {
  return positions < 255 ? 1 : 2;
}

/**
 * The smaller of the two tables that decode a code; the dense one when both are equal, since it is faster.
 *
 * @param code - Two levels, at most 16 channels, so that a word fits two bytes.
 * @returns Dense with 2^channels entries, or sorted with as many as the code has positions.
 * @check src/core/program/wordTable.test.ts
 */
export function wordTableFor(code: CodeTable): WordTable {
  const words = 2 ** code.channels.length;
  const bytes = positionBytes(code.positions);
  if (words * bytes > code.positions * (2 + bytes)) {
    const rows = code.words.map((word, position) => ({ packed: packedWord(word), position }));
    rows.sort((a, b) => a.packed - b.packed);
    return { kind: 'sorted', words: rows.map((r) => r.packed), positions: rows.map((r) => r.position) };
  }
  const positions = new Array<number | null>(words).fill(null);
  for (const [position, word] of code.words.entries()) positions[packedWord(word)] = position;
  return { kind: 'dense', positions };
}
