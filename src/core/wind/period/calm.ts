import { requireAtLeast } from '../refusal.ts';

/** Below this a 10-minute mean is a calm in reports of aviation and weather services. [m/s] */
export const REPORTED_CALM_M_PER_S = 0.5;

/**
 * Speed below which a sample is a calm: the larger of what cups and vane need to start.
 *
 * Below the vane's start its direction means nothing, even while the cups still turn.
 *
 * @param starts - Starting speeds of both. [m/s], each ≥ 0
 * @returns Threshold; a sample is calm when its speed is lower. [m/s]
 * @throws `wind/bad-reading` when one is negative or not finite.
 * @source EPA-454/R-99-005 (2000), section 6.2.3.
 * @check test/published/epa-454-r-99-005/calm.test.ts
 */
export function calmThreshold(starts: {
  readonly cupsStartMPerS: number;
  readonly vaneStartMPerS: number;
}): number {
  requireAtLeast(starts.cupsStartMPerS, 0, 'calmThreshold(cupsStartMPerS)', 'm/s');
  requireAtLeast(starts.vaneStartMPerS, 0, 'calmThreshold(vaneStartMPerS)', 'm/s');
  return Math.max(starts.cupsStartMPerS, starts.vaneStartMPerS);
}

/**
 * Whether a speed counts as calm; a speed equal to the threshold does not.
 *
 * Standing cups are calm even where the threshold is 0.
 *
 * @param speedMPerS - [m/s], ≥ 0
 * @param thresholdMPerS - As `calmThreshold` gives it. [m/s], ≥ 0
 * @source EPA-454/R-99-005 (2000), section 6.2.3.
 * @check test/published/epa-454-r-99-005/calm.test.ts
 */
export function isCalm(speedMPerS: number, thresholdMPerS: number): boolean {
  return speedMPerS < thresholdMPerS || speedMPerS === 0;
}
