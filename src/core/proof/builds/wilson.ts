import normalQuantile from '@stdlib/stats-base-dists-normal-quantile';
import type { Share } from '../proof.ts';

/** Standard deviations that hold 95 of 100 cases: 1.959964. [-] */
export const Z95 = normalQuantile(0.975, 0, 1);

/**
 * Share of successes with the range that holds the true one in 95 of 100 cases.
 *
 * @param successes - 0..trials. [-]
 * @param trials - [-], ≥ 1
 * @source E. B. Wilson, Probable inference, the law of succession, and statistical inference, JASA 22 (1927) 209.
 * @check test/published/wilson
 */
export function wilsonShare(successes: number, trials: number): Share {
  const value = successes / trials;
  const square = Z95 * Z95;
  const scale = 1 + square / trials;
  const middle = (value + square / (2 * trials)) / scale;
  const half = (Z95 * Math.sqrt((value * (1 - value)) / trials + square / (4 * trials * trials))) / scale;
  // With none or all of them the formula ends at 0 or 1 exactly; rounding would leave a hair.
  return {
    value,
    low: successes === 0 ? 0 : middle - half,
    high: successes === trials ? 1 : middle + half,
  };
}
