import { wrapDegrees, type Degrees } from '../../units/index.ts';
import { badReading, badSetting } from '../refusal.ts';

/** The 32 points clockwise from north; every second makes 16, every fourth 8, every eighth 4. */
const POINTS = [
  ...['N', 'NbE', 'NNE', 'NEbN', 'NE', 'NEbE', 'ENE', 'EbN'],
  ...['E', 'EbS', 'ESE', 'SEbE', 'SE', 'SEbS', 'SSE', 'SbE'],
  ...['S', 'SbW', 'SSW', 'SWbS', 'SW', 'SWbW', 'WSW', 'WbS'],
  ...['W', 'WbN', 'WNW', 'NWbW', 'NW', 'NWbN', 'NNW', 'NbW'],
] as const;

/** Number of points that have names. */
export type PointCount = 4 | 8 | 16 | 32;

/**
 * Names of the compass points clockwise from north.
 *
 * @param count - 4, 8, 16 or 32. [-]
 * @throws `wind/bad-setting` for another number, which has no names.
 * @source Common practice, no source (the mariner's compass).
 * @check src/core/wind/rose/compassPoint.test.ts
 */
export function compassPoints(count: PointCount): string[] {
  if (![4, 8, 16, 32].includes(count)) {
    throw badSetting('compassPoints(count)', count, '4, 8, 16 or 32 points', 'Use 16.');
  }
  return POINTS.filter((_, i) => i % (POINTS.length / count) === 0);
}

/**
 * Compass point of a heading; an edge between two points belongs to the clockwise one (11.25° is NNE of 16).
 *
 * @param headingDeg - Clockwise from true north; any finite value. [deg]
 * @param count - 4, 8, 16 or 32. [-]
 * @throws `wind/bad-reading` when the heading is not finite; `wind/bad-setting` as `compassPoints`.
 * @source Common practice, no source; the edge rule is a convention, stated here.
 * @check src/core/wind/rose/compassPoint.test.ts
 */
export function compassPoint(headingDeg: Degrees, count: PointCount = 16): string {
  const names = compassPoints(count);
  if (!Number.isFinite(headingDeg)) {
    throw badReading('compassPoint(headingDeg)', headingDeg, 'a finite angle in degrees');
  }
  const width = 360 / count;
  return names[Math.floor(wrapDegrees(headingDeg + width / 2) / width) % count]!;
}
