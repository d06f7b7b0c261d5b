import type { Degrees } from '../../units/index.ts';
import type { Arc } from '../direction/smallestArc.ts';
import { REPORTED_CALM_M_PER_S } from '../period/calm.ts';
import { requireAtLeast, requireFinite } from '../refusal.ts';
import { roundedHeading } from './roundedHeading.ts';

/** Spread from which a wind is variable, and from which no direction is given at all. [deg] */
const VARIABLE_DEG = 60;
const NO_DIRECTION_DEG = 180;

/** Below this a variable wind gets no direction (3 kt). [m/s] */
const LIGHT_M_PER_S = 1.5;

/** A gust is given from this much above the mean (10 kt). [m/s] */
const GUST_ABOVE_M_PER_S = 5;

/** What ten minutes of wind came to. */
export interface TenMinutes {
  /** [m/s], ≥ 0 */
  readonly meanSpeedMPerS: number;
  /** `null` where the readings cancel out. [deg] */
  readonly meanHeadingDeg: Degrees | null;
  /** Arc that holds every direction of the ten minutes; `null` when there was none (calm). [deg] */
  readonly directions: Arc | null;
  /** Highest 3 s mean; `null` = not known. [m/s] */
  readonly gustMPerS: number | null;
}

/** A wind as reported for aviation. */
export interface AviationWind {
  /** `variable-between` has a mean and two extremes; `variable` has no direction. */
  readonly kind: 'calm' | 'steady' | 'variable-between' | 'variable';
  /** To 10°, north as 360; `null` when calm or variable. [deg] */
  readonly headingDeg: Degrees | null;
  /** Extremes clockwise, to 10°; only for `variable-between`. [deg] */
  readonly between: { readonly fromDeg: Degrees; readonly toDeg: Degrees } | null;
  readonly meanSpeedMPerS: number;
  /** `null` unless it exceeds the mean by 5 m/s or more. [m/s] */
  readonly gustMPerS: number | null;
}

/**
 * Ten minutes of wind as reported for aviation: calm, steady, or variable.
 *
 * After a marked change of wind only the time since the change should be passed in.
 *
 * @param wind - Means, spread and gust of the ten minutes.
 * @throws `wind/bad-reading` when a number is out of range.
 * @source ICAO Annex 3, section 4.1.5.2 (3 kt and 10 kt taken as 1.5 m/s and 5 m/s, as printed there).
 * @check test/published/icao-annex-3/aviationWind.test.ts
 */
export function aviationWind(wind: TenMinutes): AviationWind {
  const { meanSpeedMPerS, meanHeadingDeg, directions } = wind;
  requireAtLeast(meanSpeedMPerS, 0, 'aviationWind(meanSpeedMPerS)', 'm/s');
  if (wind.gustMPerS !== null) requireAtLeast(wind.gustMPerS, 0, 'aviationWind(gustMPerS)', 'm/s');
  if (directions !== null) requireFinite(directions.rangeDeg, 'aviationWind(directions.rangeDeg)', '[deg]');
  const gusty = wind.gustMPerS !== null && wind.gustMPerS - meanSpeedMPerS >= GUST_ABOVE_M_PER_S;
  const speeds = { meanSpeedMPerS, gustMPerS: gusty ? wind.gustMPerS : null };
  const without = { headingDeg: null, between: null, ...speeds };
  if (meanSpeedMPerS < REPORTED_CALM_M_PER_S) return { kind: 'calm', ...without };
  if (meanHeadingDeg === null || directions === null) return { kind: 'variable', ...without };
  const headingDeg = roundedHeading(meanHeadingDeg);
  const { rangeDeg } = directions;
  if (rangeDeg < VARIABLE_DEG) return { kind: 'steady', headingDeg, between: null, ...speeds };
  if (rangeDeg >= NO_DIRECTION_DEG || meanSpeedMPerS < LIGHT_M_PER_S) return { kind: 'variable', ...without };
  const between = { fromDeg: roundedHeading(directions.fromDeg), toDeg: roundedHeading(directions.toDeg) };
  return { kind: 'variable-between', headingDeg, between, ...speeds };
}
