import type { CodeFamily } from './family.ts';
import { planFromWords, tracksFor } from './wordTracks.ts';

/** Gray code of a number: neighbours differ in one bit. @source F. Gray, US 2632058 (1953): g = k XOR floor(k/2) */
export function grayOf(count: number): number {
  return count ^ (count >> 1);
}

/**
 * Reflected Gray for any even count: the middle N words of the next full code.
 *
 * The full code is its own mirror image but for the top bit, so the words cut at equal distance from both
 * ends join in a circle with one change.
 *
 * @source derived: words G(o)…G(o+N−1) with o = (2^n − N)/2, since G(2^(n−1)−1−j) and G(2^(n−1)+j) differ in the top bit only.
 * @check test/published/gray-code
 */
export const reflectedGray: CodeFamily = {
  name: 'reflected-gray',
  title: 'reflected Gray',
  refusal: (positions) =>
    positions % 2 === 0
      ? null
      : {
          code: 'codes/odd-count',
          what:
            'No code of two levels can change one channel at a time round an odd number of positions: ' +
            'every channel returns to its start, so it changes an even number of times, and the changes add up to the positions.',
          allowed: `an even number of positions, such as ${Math.max(2, positions - 1)} or ${positions + 1}`,
          fix: `Set need.positions to ${Math.max(2, positions - 1)} or ${positions + 1}.`,
        },
  build: (positions) => {
    const tracks = tracksFor(positions);
    const first = (2 ** tracks - positions) / 2;
    return planFromWords(
      Array.from({ length: positions }, (_, k) => grayOf(first + k)),
      tracks,
    );
  },
};
