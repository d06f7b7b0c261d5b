import type { CodePlan, Level } from '../model.ts';
import { trackFromCells } from '../track.ts';

/** Digits of one position in base 3, the highest first. */
export type Digits = readonly Level[];

/** Fewest channels of three levels that tell `positions` apart, at least 1. */
export function colourTracksFor(positions: number): number {
  let channels = 1;
  while (3 ** channels < positions) channels += 1;
  return channels;
}

/** One track and one channel a digit, the highest first: track 0 is the coarsest. */
export function planFromDigits(words: readonly Digits[]): CodePlan {
  const tracks = words[0]!.map((_, digit) =>
    trackFromCells(
      words.map((word) => word[digit]!),
      3,
    ),
  );
  return { tracks, channels: tracks.map((_, track) => ({ track, angleDeg: 0 })) };
}

/**
 * A longer circle of words: at each word of a shorter one the added last digit walks through some of its levels.
 *
 * @param walks - Levels that the last digit takes at each word; each walk begins where the one before ended, round the
 *   circle. n = words
 */
export function walkLastDigit(words: readonly Digits[], walks: readonly (readonly Level[])[]): Digits[] {
  return words.flatMap((word, k) => walks[k]!.map((level) => [...word, level]));
}
