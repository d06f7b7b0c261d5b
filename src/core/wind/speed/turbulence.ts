import { requireAtLeast, requirePositive } from '../refusal.ts';

/**
 * Turbulence intensity: standard deviation of speed over its mean.
 *
 * @param deviationMPerS - Standard deviation within the period. [m/s], ≥ 0
 * @param meanMPerS - Mean of the same period. [m/s], ≥ 0
 * @returns `null` when the mean is 0, where the quotient says nothing. [-]
 * @throws `wind/bad-reading` when either is negative or not finite.
 * @source IEC 61400-1 (turbulence intensity over 10 minutes); value from memory.
 * @check test/published/wmo-8/gust.test.ts
 */
export function turbulenceIntensity(deviationMPerS: number, meanMPerS: number): number | null {
  requireAtLeast(deviationMPerS, 0, 'turbulenceIntensity(deviationMPerS)', 'm/s');
  requireAtLeast(meanMPerS, 0, 'turbulenceIntensity(meanMPerS)', 'm/s');
  return meanMPerS > 0 ? deviationMPerS / meanMPerS : null;
}

/**
 * Gust factor: highest 3 s mean over the mean of the period.
 *
 * @param gustMPerS - Highest 3 s mean of the period. [m/s], ≥ 0
 * @param meanMPerS - Mean of the same period. [m/s], ≥ 0
 * @returns `null` when the mean is 0. [-]
 * @throws `wind/bad-reading` when either is negative or not finite.
 * @source WMO-No. 8, chapter on surface wind (gust factor); value from memory.
 * @check test/published/wmo-8/gust.test.ts
 */
export function gustFactor(gustMPerS: number, meanMPerS: number): number | null {
  requireAtLeast(gustMPerS, 0, 'gustFactor(gustMPerS)', 'm/s');
  requireAtLeast(meanMPerS, 0, 'gustFactor(meanMPerS)', 'm/s');
  return meanMPerS > 0 ? gustMPerS / meanMPerS : null;
}

/**
 * Wind run: how far the air went past, over the time that was really measured.
 *
 * @param meanMPerS - Mean speed. [m/s], ≥ 0
 * @param coveredS - Time with readings; gaps add nothing. [s], > 0
 * @returns Distance. [km]
 * @throws `wind/bad-reading` when either is out of range.
 * @source Definition (speed times time).
 * @check src/core/wind/speed/turbulence.test.ts
 */
export function windRunKm(meanMPerS: number, coveredS: number): number {
  requireAtLeast(meanMPerS, 0, 'windRunKm(meanMPerS)', 'm/s');
  requirePositive(coveredS, 'windRunKm(coveredS)', 's');
  return (meanMPerS * coveredS) / 1000;
}
