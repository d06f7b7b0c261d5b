import type { CodePlan, Level } from './model.ts';
import { trackFromCells } from './track.ts';

/** Fewest tracks of two levels that tell `positions` apart, at least 1. */
export function tracksFor(positions: number): number {
  return Math.max(1, Math.ceil(Math.log2(positions)));
}

/**
 * One track and one channel a bit, the highest bit first: track 0 is the coarsest.
 *
 * @param words - Number of each position in order. n = positions
 * @param tracks - Bits of each number. [-], 1..16
 */
export function planFromWords(words: readonly number[], tracks: number): CodePlan {
  const bits = Array.from({ length: tracks }, (_, track) => tracks - 1 - track);
  return {
    tracks: bits.map((bit) => trackFromCells(words.map((word) => ((word >> bit) & 1) as Level))),
    channels: bits.map((_, track) => ({ track, angleDeg: 0 })),
  };
}
