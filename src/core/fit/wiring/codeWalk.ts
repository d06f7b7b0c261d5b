import { boundaries, type CodeTable, type Word } from '../../codes/index.ts';
import type { Degrees } from '../../units/index.ts';

/** One boundary of a code as bits of a number, channel 0 the lowest. */
export interface WalkBoundary {
  readonly angleDeg: Degrees;
  /** Channels that change, and those of them that read 1 clockwise of it. */
  readonly changing: number;
  readonly risesTo: number;
}

/**
 * A code as a ring of gaps between boundaries: gap g lies clockwise of boundary g, up to boundary g + 1.
 *
 * The disc angle growing from gap g crosses boundary g + 1 into gap g + 1; falling it crosses boundary g into g - 1.
 */
export interface CodeWalk {
  readonly code: CodeTable;
  readonly channels: number;
  readonly boundaries: readonly WalkBoundary[];
  /** Word of each gap, and its bits. n = boundaries */
  readonly words: readonly Word[];
  readonly bits: readonly number[];
}

/** Bits of a word, channel 0 the lowest. */
export function bitsOf(word: Word): number {
  let bits = 0;
  for (let c = 0; c < word.length; c++) if (word[c] === '1') bits |= 1 << c;
  return bits >>> 0;
}

/** The ring of a code with two levels and at most 31 channels. */
export function codeWalk(code: CodeTable): CodeWalk {
  const all = boundaries(code);
  const words = all.map(({ after }) => after);
  return {
    code,
    channels: code.channels.length,
    boundaries: all.map(({ angleDeg, changing, after }) => {
      const mask = changing.reduce((bits, c) => (bits | (1 << c)) >>> 0, 0);
      return { angleDeg, changing: mask, risesTo: (bitsOf(after) & mask) >>> 0 };
    }),
    words,
    bits: words.map(bitsOf),
  };
}

/** True when exactly one channel changes at every boundary. */
export function isSingleStep({ boundaries: all }: CodeWalk): boolean {
  return all.every(({ changing }) => (changing & (changing - 1)) === 0);
}

/** Where a step from a gap leads. */
export interface WalkStep {
  readonly boundary: number;
  readonly gap: number;
}

/** The next boundary one way round at which a wired channel changes; `null` when there is none all the way round. */
export function stepFrom(walk: CodeWalk, gap: number, way: 1 | -1, lost: number): WalkStep | null {
  const count = walk.boundaries.length;
  for (let tried = 0, at = gap; tried < count; tried++) {
    const boundary = way > 0 ? (at + 1) % count : at;
    at = way > 0 ? boundary : (at - 1 + count) % count;
    if ((walk.boundaries[boundary]!.changing & ~lost) !== 0) return { boundary, gap: at };
  }
  return null;
}
