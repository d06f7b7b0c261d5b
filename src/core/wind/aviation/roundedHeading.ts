import { wrapDegrees, type Degrees } from '../../units/index.ts';
import { requireFinite } from '../refusal.ts';

/**
 * Heading as aviation and weather reports write it: to the nearest 10°, a final 5 upwards, north as 360.
 *
 * @param headingDeg - Clockwise from true north; any finite value. [deg]
 * @returns 10, 20, … 360; never 0, which means calm there. [deg]
 * @throws `wind/bad-reading` when not finite.
 * @source ICAO Annex 3, Attachment C (final digits 1–4 down, 5–9 up).
 * @check test/published/icao-annex-3/aviationWind.test.ts
 */
export function roundedHeading(headingDeg: Degrees): Degrees {
  requireFinite(headingDeg, 'roundedHeading(headingDeg)', '[deg]');
  const tens = Math.floor((wrapDegrees(headingDeg) + 5) / 10) % 36;
  return tens === 0 ? 360 : tens * 10;
}
