import type { HeadPlan } from '../head/index.ts';
import { wholeThresholds } from './wholeThresholds.ts';

/** How the program tells three marks apart. */
export type MarkFacts =
  | {
      readonly kind: 'greys';
      /** Thresholds between level 0 and 1, and between 1 and 2. [counts] */
      readonly pairs: readonly [{ low: number; high: number }, { low: number; high: number }];
      /** Whether counts rise from level 0 to level 2. */
      readonly isRising: boolean;
    }
  | {
      readonly kind: 'colours';
      /** Shares of red and green of each level. [1/2048], n = 3 */
      readonly centroids: readonly (readonly [number, number])[];
      /** Square of the share of the second nearest distance up to which a reading counts. [1/256] */
      readonly rejectSquare: number;
      /** Red, green and blue together below which nothing is judged. [counts] */
      readonly leastSum: number;
    };

/** Parts of a whole share in the program: squares of two differences, times 256, still fit 32 bits. [-] */
export const SHARE_PARTS = 2048;
/** Parts of a whole square ratio in the program. [-] */
export const SQUARE_PARTS = 256;

/** How three marks are told apart, in whole numbers; `null` for windows and lands. */
export function markFacts({ marks }: HeadPlan): MarkFacts | null {
  if (marks === null) return null;
  if (marks.kind === 'greys') {
    const [lower, upper] = marks.thresholds;
    const pairs = [wholeThresholds(lower), wholeThresholds(upper)] as const;
    return { kind: 'greys', pairs, isRising: marks.counts[2]! > marks.counts[0]! };
  }
  return {
    kind: 'colours',
    centroids: marks.centroids.map(([r, g]) => [Math.round(r * SHARE_PARTS), Math.round(g * SHARE_PARTS)]),
    rejectSquare: Math.round(marks.rejectRatio ** 2 * SQUARE_PARTS),
    leastSum: Math.max(1, Math.ceil(marks.leastSumCounts)),
  };
}

/** Counts of one channel: three where its mark is looked at in three colours. [-] */
export function countsEach({ marks }: HeadPlan): 1 | 3 {
  return marks?.kind === 'colours' ? 3 : 1;
}

/** Pairs of thresholds of one channel: two between three greys. [-] */
export function thresholdPairs({ marks }: HeadPlan): 1 | 2 {
  return marks?.kind === 'greys' ? 2 : 1;
}
