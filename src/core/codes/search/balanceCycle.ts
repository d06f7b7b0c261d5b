import type { Random } from '../../units/index.ts';
import type { StepCounter } from './limits.ts';
import { WordCycle, type FaceSwap } from './wordCycle.ts';

/** Chance scale of a swap that makes the counts less even; low enough to settle, high enough to leave a corner. */
const HEAT = 1;

/** Ways to join two circles that are tried before the split is given up. */
const JOIN_TRIES = 24;

/** How much less even the counts become by moving two changes from one bit to another, twice. [changes²/4] */
function worsening(counts: Int32Array, moves: readonly (readonly [number, number])[]): number {
  const change = new Map<number, number>();
  for (const [less, more] of moves) {
    change.set(less, (change.get(less) ?? 0) - 2);
    change.set(more, (change.get(more) ?? 0) + 2);
  }
  let sum = 0;
  for (const [bit, by] of change) sum += by * (2 * counts[bit]! + by);
  return sum / 4;
}

/** Draws a way to join the two circles that a split leaves, or null. */
function drawJoin(
  cycle: WordCycle,
  split: FaceSwap,
  random: Random,
): (FaceSwap & { readonly bit: number }) | null {
  const { length } = cycle;
  const span = (split.far - split.place + length) % length;
  const channels = cycle.counts.length;
  for (let tries = 0; tries < JOIN_TRIES; tries++) {
    const offset = Math.floor(random.uniform() * span);
    const place = (split.place + 1 + offset) % length;
    const word = cycle.at(place);
    // The last word of the part is followed by its first, once the split is made.
    const next = offset === span - 1 ? cycle.at(split.place + 1) : cycle.at(place + 1);
    const across = Math.floor(random.uniform() * channels);
    const bit = 31 - Math.clz32(word ^ next);
    if (across === bit) continue;
    const [a, b] = [cycle.placeOfWord(word ^ (1 << across)), cycle.placeOfWord(next ^ (1 << across))];
    if (a < 0 || b < 0) continue;
    const isInside = (p: number): boolean => (p - split.place - 1 + 2 * length) % length < span;
    if (isInside(a) || isInside(b)) continue;
    const after = (p: number): number => (p === split.place ? (split.far + 1) % length : (p + 1) % length);
    if (after(a) === b) return { place, far: a, across, bit };
    if (after(b) === a) return { place, far: b, across, bit };
  }
  return null;
}

/** Tries one drawn change of the circle, and keeps it by how it serves the balance. */
function tryOnce(cycle: WordCycle, random: Random): void {
  const place = Math.floor(random.uniform() * cycle.length);
  const across = Math.floor(random.uniform() * cycle.counts.length);
  const bit = cycle.bitAt(place);
  const parallel = across === bit ? null : cycle.parallel(place, across);
  if (!parallel) return cycle.flipCorner(place);
  const swap = { place, far: parallel.far, across };
  const accepts = (worse: number): boolean => worse <= 0 || random.uniform() < Math.exp(-worse / HEAT);
  if (parallel.sameWay) {
    if (accepts(worsening(cycle.counts, [[bit, across]]))) cycle.swapSameWay(swap);
    return;
  }
  const join = drawJoin(cycle, swap, random);
  if (!join) return;
  const moves = [
    [bit, across],
    [join.bit, join.across],
  ] as const;
  if (accepts(worsening(cycle.counts, moves))) cycle.swapTwice(swap, join);
}

/**
 * Reshapes a cyclic single-step code until all bits change equally often, within two.
 *
 * @param words - A circle of words, each one bit from the next. n ≥ 4
 * @param channels - Bits of a word. [-]
 * @returns The reshaped circle, or `null` when the steps ran out.
 * @source derived: two parallel edges of a square can be swapped for its other two; walked the same way the circle
 *   stays one circle, walked against each other it falls in two, which a second swap joins. Balanced codes exist for
 *   every n: G. S. Bhat, C. D. Savage, Electron. J. Combin. 3 (1996) R25.
 * @check test/published/balanced-gray
 */
export function balanceCycle(
  words: readonly number[],
  channels: number,
  random: Random,
  steps: StepCounter,
): number[] | null {
  const cycle = new WordCycle(words, channels);
  while (Math.max(...cycle.counts) - Math.min(...cycle.counts) > 2) {
    if (steps.left <= 0) return null;
    steps.step();
    tryOnce(cycle, random);
  }
  return cycle.words;
}
