import type { CodeFamily } from '../family.ts';
import { planFromWords, tracksFor } from '../wordTracks.ts';
import { exactChannels, oddCountRefusal } from './refusals.ts';

/** Gray code of a number: neighbours differ in one bit. @source F. Gray, US 2632058 (1953): g = k XOR floor(k/2) */
export function grayOf(count: number): number {
  return count ^ (count >> 1);
}

/**
 * Words of the reflected Gray code cut from the middle of the next full code.
 *
 * The full code is its own mirror image but for the top bit, so the words cut at equal distance from both
 * ends join in a circle with one change.
 *
 * @param positions - N; of an odd count, the next even count's words but the last. [-], 2..4096
 * @source derived: words G(o)…G(o+N−1) with o = (2^n − N)/2, since G(2^(n−1)−1−j) and G(2^(n−1)+j) differ in the top bit only.
 * @check test/published/gray-code
 */
export function centredGray(positions: number): number[] {
  const first = (2 ** tracksFor(positions) - (positions + (positions % 2))) / 2;
  return Array.from({ length: positions }, (_, k) => grayOf(first + k));
}

/** Reflected Gray for any even count; for any count at all where the seam may be open. */
export const reflectedGray: CodeFamily = {
  name: 'reflected-gray',
  title: 'reflected Gray',
  options: ['channels', 'seam'],
  refusal: (positions, { channels, seam }) =>
    (seam === 'open' ? null : oddCountRefusal(positions)) ?? exactChannels(positions, channels),
  build: (positions) => planFromWords(centredGray(positions), tracksFor(positions)),
};
