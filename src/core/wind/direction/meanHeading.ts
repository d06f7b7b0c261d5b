import { degToRad, radToDeg, wrapDegrees, type Degrees } from '../../units/index.ts';
import { badReading, noReadings } from '../refusal.ts';

/** The direction that readings agree on, and how much they agree. */
export interface MeanHeading {
  /** In [0, 360), where the wind comes from. `null`, not 0, when the readings cancel out. [deg] */
  readonly headingDeg: Degrees | null;
  /** Length R of the mean unit vector: 0 = no agreement, 1 = all equal. [-] */
  readonly agreement: number;
}

/**
 * Below this agreement the direction is rounding noise [-]: 1e-12 is about 4500 ulp of 1, and stays
 * above the rounding left by the sum of a year of readings at 1 Hz, about ulp times the root of 3e7.
 */
export const NO_AGREEMENT = 1e-12;

/**
 * Heading and length of a summed vector.
 *
 * @param north - Sum of the north parts. [-] or [m/s]
 * @param east - Sum of the east parts, in the same unit. [-] or [m/s]
 * @returns Heading in [0, 360), meaningless (but finite) for a sum of zero. [deg]
 */
export function headingOf(north: number, east: number): Degrees {
  return wrapDegrees(radToDeg(Math.atan2(east, north)));
}

/**
 * Mean of headings taken round the circle, each counting the same: 350° and 10° give 0°, not 180°.
 *
 * @param headings - Clockwise from true north; any finite value, wrapped here. [deg], n ≥ 1
 * @returns Mean and agreement. `headingDeg` is `null`, not 0, when agreement < 1e-12.
 * @throws `wind/no-readings` when n = 0; `wind/bad-reading` at the first value that is not finite.
 * @source K. V. Mardia, P. E. Jupp, Directional Statistics, Wiley 2000 (mean direction, resultant length);
 *   the unit-vector mean of EPA-454/R-99-005 (2000), section 6.2.2.
 * @check test/published/mardia-jupp-2000/meanHeading.test.ts
 */
export function meanHeading(headings: readonly Degrees[]): MeanHeading {
  if (headings.length === 0) throw noReadings('meanHeading(headings)');
  let north = 0;
  let east = 0;
  for (const [i, heading] of headings.entries()) {
    if (!Number.isFinite(heading)) {
      throw badReading(`meanHeading(headings[${i}])`, heading, 'a finite angle in degrees');
    }
    const turn = degToRad(wrapDegrees(heading));
    north += Math.cos(turn);
    east += Math.sin(turn);
  }
  return meanOfSum(north, east, headings.length);
}

/**
 * Mean heading from a summed unit vector.
 *
 * @param north - Sum of the cosines. [-]
 * @param east - Sum of the sines. [-]
 * @param weight - Number of readings, or sum of their weights; above 0. [-]
 */
export function meanOfSum(north: number, east: number, weight: number): MeanHeading {
  const agreement = Math.min(1, Math.hypot(north, east) / weight); // equal readings can round above 1
  return { headingDeg: agreement < NO_AGREEMENT ? null : headingOf(north, east), agreement };
}
