import { speedIn } from '../speed/speedUnit.ts';
import type { AviationWind } from './aviationWind.ts';

/** From this speed on a report only says "more than". [m/s] and [kt] */
const MORE_THAN = { MPS: 50, KT: 100 } as const;

/**
 * The wind group of an aerodrome report, such as `32012G22KT 280V350`.
 *
 * @param wind - As `aviationWind` gives it.
 * @param unit - Knots or metres per second, rounded to whole ones.
 * @source ICAO Annex 3, section 4.1.5.2 and Table A3-2; "P" for "more than" is a value from memory.
 * @check test/published/icao-annex-3/aviationWind.test.ts
 */
export function windGroup(wind: AviationWind, unit: 'KT' | 'MPS'): string {
  if (wind.kind === 'calm') return `00000${unit}`;
  const direction = wind.headingDeg === null ? 'VRB' : threeDigits(wind.headingDeg);
  const gust = wind.gustMPerS === null ? '' : `G${speedDigits(wind.gustMPerS, unit)}`;
  const between = wind.between && ` ${threeDigits(wind.between.fromDeg)}V${threeDigits(wind.between.toDeg)}`;
  return `${direction}${speedDigits(wind.meanSpeedMPerS, unit)}${gust}${unit}${between ?? ''}`;
}

function threeDigits(headingDeg: number): string {
  return String(headingDeg).padStart(3, '0');
}

function speedDigits(speedMPerS: number, unit: 'KT' | 'MPS'): string {
  const speed = Math.round(unit === 'KT' ? speedIn(speedMPerS, 'kt') : speedMPerS);
  const limit = MORE_THAN[unit];
  return speed >= limit ? `P${limit - 1}` : String(speed).padStart(2, '0');
}
