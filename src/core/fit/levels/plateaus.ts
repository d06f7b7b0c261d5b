import { densest, medianOf } from './spread.ts';

/** The two levels that a signal stays at, and how noisy it is there. */
export interface Plateaus {
  /** `null` where the signal never really changes; then `high` is where it stays. [counts] */
  readonly low: number | null;
  readonly high: number;
  /** Standard deviation of one sample. [counts] */
  readonly sigma: number;
}

/** A whole count hides an even error: its standard deviation is 1/√12. [counts] */
const ROUNDING = 1 / Math.sqrt(12);
/** A recorded bit is what it is. */
const BIT_SIGMA = 0.01;
/** Less swing than this many standard deviations, or this share of scale, is no change. [-]; own choice */
const LEAST_SIGMA = 8;
const LEAST_SHARE = 0.015;

/**
 * Lit and dark level of a signal that goes to and fro between them, whichever is the higher.
 *
 * The levels are where the samples of either half lie densest, so that slow edges and a few wild samples do not move
 * them. Noise is taken from neighbouring samples, so that slow drift does not count as noise.
 *
 * @param pieces - Samples of each stretch, in time. [counts], n ≥ 1
 * @param scale - Full scale of the converter, 1 for recorded bits. [counts]
 */
export function plateausOf(pieces: readonly (readonly number[])[], scale: number): Plateaus {
  const sorted = Float64Array.from(pieces.flat()).sort();
  const steps = pieces.flatMap((piece) => piece.slice(1).map((value, i) => Math.abs(value - piece[i]!)));
  const least = scale === 1 ? BIT_SIGMA : ROUNDING;
  const sigma = Math.max((1.4826 * medianOf(steps)) / Math.SQRT2, least);
  const trim = Math.min(sorted.length >> 2, Math.max(2, Math.floor(0.001 * sorted.length)));
  const [lowest, highest] = [sorted[trim]!, sorted[sorted.length - 1 - trim]!];
  if (highest - lowest < Math.max(LEAST_SIGMA * sigma, LEAST_SHARE * scale)) {
    return { low: null, high: densest(sorted), sigma };
  }
  const cut = cutBetween(sorted, lowest, highest);
  const low = stayed(sorted.subarray(0, cut), sigma);
  const high = stayed(sorted.subarray(cut), sigma);
  return { low, high, sigma: Math.max(least, quietSigma(pieces, [low, high], 4 * sigma)) };
}

/** Noise of the samples that stay near a plateau: edges passing count for nothing. */
function quietSigma(
  pieces: readonly (readonly number[])[],
  plateaus: readonly number[],
  near: number,
): number {
  const isNear = (value: number): boolean => plateaus.some((plateau) => Math.abs(value - plateau) <= near);
  const steps: number[] = [];
  for (const piece of pieces) {
    for (let i = 1; i < piece.length; i++) {
      if (isNear(piece[i]!) && isNear(piece[i - 1]!) && Math.abs(piece[i]! - piece[i - 1]!) <= 2 * near) {
        steps.push(Math.abs(piece[i]! - piece[i - 1]!));
      }
    }
  }
  return (1.4826 * medianOf(steps)) / Math.SQRT2;
}

/** Middle of the samples that lie within the noise of where they are densest. */
function stayed(sorted: Float64Array, sigma: number): number {
  const mode = densest(sorted);
  return medianOf([...sorted].filter((value) => Math.abs(value - mode) <= 2.5 * sigma));
}

/** Index of the first sample of the upper half, halfway between the mean of either half. */
function cutBetween(sorted: Float64Array, lowest: number, highest: number): number {
  const sums = new Float64Array(sorted.length + 1);
  for (let i = 0; i < sorted.length; i++) sums[i + 1] = sums[i]! + sorted[i]!;
  const firstAbove = (value: number): number => {
    let [low, high] = [0, sorted.length];
    while (low < high) {
      const middle = (low + high) >> 1;
      if (sorted[middle]! <= value) low = middle + 1;
      else high = middle;
    }
    return low;
  };
  let cut = firstAbove((lowest + highest) / 2);
  for (let round = 0; round < 30; round++) {
    const inside = Math.min(Math.max(cut, 1), sorted.length - 1);
    const below = sums[inside]! / inside;
    const above = (sums[sorted.length]! - sums[inside]!) / (sorted.length - inside);
    const next = firstAbove((below + above) / 2);
    if (next === cut) break;
    cut = next;
  }
  return Math.min(Math.max(cut, 1), sorted.length - 1);
}
