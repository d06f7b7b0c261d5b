import { degToRad, type Degrees } from '../../units/index.ts';
import { HeadingSum } from '../direction/headingSum.ts';
import type { MeanHeading } from '../direction/meanHeading.ts';
import { badReading, noReadings, requireAtLeast, requireFinite } from '../refusal.ts';
import { QUARTERS_OF_AN_HOUR } from './completeness.ts';

/** Direction of one quarter of an hour; `null` in a list where the quarter is not valid. */
export interface QuarterHeading extends MeanHeading {
  /** Readings that went into it. [-], ≥ 0 */
  readonly readings: number;
}

/**
 * Spread of direction in an hour from its quarters: the root of the mean square.
 *
 * The slow swing of the mean from quarter to quarter is left out on purpose.
 *
 * @param spreads - Spread of each 15 minutes; `null` where the quarter is not valid. [deg], n ≤ 4
 * @returns `null` with fewer than two valid quarters. [deg]
 * @throws `wind/bad-reading` when one is negative or not finite.
 * @source EPA-454/R-99-005 (2000), section 6.1 and 6.2.1; the equation is a value from memory.
 * @check test/published/epa-454-r-99-005/direction.test.ts
 */
export function hourSpread(spreads: readonly (Degrees | null)[]): Degrees | null {
  const valid = spreads.filter((spread) => spread !== null);
  for (const spread of valid) requireAtLeast(spread, 0, 'hourSpread(spreads)', '°');
  if (valid.length < QUARTERS_OF_AN_HOUR) return null;
  return Math.sqrt(valid.reduce((sum, spread) => sum + spread ** 2, 0) / valid.length);
}

/**
 * Mean heading of an hour from its quarters, the same as from the readings themselves.
 *
 * Never unwrap the four means instead: that method is for readings a second apart.
 *
 * @param quarters - Mean, agreement and count of each; `null` where not valid. n ≤ 4
 * @returns `null` with fewer than two valid quarters. [deg], [-]
 * @throws `wind/no-readings` when all valid quarters are empty; `wind/bad-reading`.
 * @source EPA-454/R-99-005 (2000), sections 6.1, 6.2.1 and 6.2.2.
 * @check src/core/wind/period/hourFromQuarters.test.ts
 */
export function hourHeading(quarters: readonly (QuarterHeading | null)[]): MeanHeading | null {
  const valid = quarters.filter((quarter) => quarter !== null);
  if (valid.length < QUARTERS_OF_AN_HOUR) return null;
  const sum = new HeadingSum();
  for (const { headingDeg, agreement, readings } of valid) {
    requireAtLeast(readings, 0, 'hourHeading(quarters.readings)', 'readings');
    if (!(agreement >= 0 && agreement <= 1)) {
      throw badReading('hourHeading(quarters.agreement)', agreement, '0..1 [-]');
    }
    requireFinite(headingDeg ?? 0, 'hourHeading(quarters.headingDeg)', '[deg]');
    const turn = degToRad(headingDeg ?? 0);
    const length = headingDeg === null ? 0 : agreement; // readings that cancelled out add only their number
    sum.addUnit(length * Math.cos(turn), length * Math.sin(turn), readings);
  }
  if (sum.weight === 0) throw noReadings('hourHeading(quarters)');
  return sum.mean();
}
