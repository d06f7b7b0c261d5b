import { VanewrightError } from '../../error/index.ts';
import type { Degrees } from '../../units/index.ts';
import {
  badReading,
  type Caution,
  requireFinite,
  requirePositive,
  tooFewReadings,
  unequalLengths,
} from '../refusal.ts';
import { dampingFromOvershoot, naturalWavelength, wavelengthOverDelay } from './vaneResponse.ts';

/** What a vane is asked to reach. */
export const vaneRanges = {
  /** EPA-454/R-99-005, section 2.2.1. [-] */
  overshootAtMost: 0.25,
  /** EPA-454/R-99-005, section 2.2.1. [-] */
  damping: { low: 0.4, high: 0.7 },
  /** WMO-No. 8, section 5.5, value from memory. [-] */
  dampingElsewhere: { low: 0.3, high: 0.7 },
  /** WMO-No. 8, section 5.5, value from memory. [m] */
  dampedWavelengthBelowM: 10,
  /** EPA-454/R-99-005, Table 8-2, value from memory. [m] */
  delayDistanceAtMostM: 5,
} as const;

/** Above this the test is not valid, as the tail stalls. [deg]; common practice, no source */
const LARGEST_RELEASE_DEG = 20;

/** Turning points of a vane after its release, taken off the record. */
export interface Release {
  /** Wind speed, steady through the test. [m/s], > 0 */
  readonly speedMPerS: number;
  /** Release angle first, then each turning point, from the line of the wind; sides alternate. [deg], n ≥ 2 */
  readonly turningPointsDeg: readonly Degrees[];
  /** Time of each, from the same clock. [s], n the same */
  readonly timesS: readonly number[];
}

/** Motion of a vane as tested. */
export interface VaneMotion {
  /** Mean ratio of a half-swing to the one before. [-] */
  readonly overshoot: number;
  /** ζ. [-] */
  readonly damping: number;
  /** Wind that passes in a full swing. [m] */
  readonly dampedWavelengthM: number;
  readonly naturalWavelengthM: number;
  /** Wind that passes until half the deflection is made good. [m] */
  readonly delayDistanceM: number;
  /** Which of `vaneRanges` it reaches. */
  readonly reaches: {
    readonly overshoot: boolean;
    readonly damping: boolean;
    readonly dampingElsewhere: boolean;
    readonly dampedWavelength: boolean;
    readonly delayDistance: boolean;
  };
  readonly cautions: readonly Caution[];
}

/**
 * Damping, overshoot and wavelengths of a vane that was held off the wind and let go.
 *
 * The overshoot is the mean over all swings (geometric), the period twice the mean time between turning points.
 *
 * @param release - Turning points with times, and the wind. [deg], [s], [m/s]
 * @throws `wind/too-few-readings` without a turning point, `wind/no-overshoot` when sides do not alternate or
 *   swings do not shrink, `wind/unequal-lengths`, `wind/bad-reading`.
 * @source ASTM D5366; P. L. Finkelstein, J. Appl. Meteor. 20 (1981) 588 (quantities); formulae as `vaneResponse`.
 * @check test/published/vane-test-method/dynamics.test.ts
 */
export function vaneMotion(release: Release): VaneMotion {
  const { speedMPerS, turningPointsDeg: points, timesS } = release;
  requirePositive(speedMPerS, 'vaneMotion(speedMPerS)', 'm/s');
  checkPoints(points, timesS);
  const swings = points.length - 1;
  const overshoot = Math.abs(points.at(-1)! / points[0]!) ** (1 / swings);
  const damping = dampingFromOvershoot(overshoot);
  const periodS = (2 * (timesS.at(-1)! - timesS[0]!)) / swings;
  const dampedWavelengthM = speedMPerS * periodS;
  const naturalWavelengthM = naturalWavelength(dampedWavelengthM, damping);
  const delayDistanceM = naturalWavelengthM / wavelengthOverDelay(damping);
  const within = (range: { low: number; high: number }): boolean =>
    damping >= range.low && damping <= range.high;
  return {
    overshoot,
    damping,
    dampedWavelengthM,
    naturalWavelengthM,
    delayDistanceM,
    reaches: {
      overshoot: overshoot <= vaneRanges.overshootAtMost,
      damping: within(vaneRanges.damping),
      dampingElsewhere: within(vaneRanges.dampingElsewhere),
      dampedWavelength: dampedWavelengthM < vaneRanges.dampedWavelengthBelowM,
      delayDistance: delayDistanceM <= vaneRanges.delayDistanceAtMostM,
    },
    cautions: Math.abs(points[0]!) > LARGEST_RELEASE_DEG ? [releaseTooWide(points[0]!)] : [],
  };
}

function checkPoints(points: readonly Degrees[], times: readonly number[]): void {
  if (points.length !== times.length)
    throw unequalLengths('vaneMotion(release)', points.length, times.length);
  if (points.length < 2) {
    throw tooFewReadings(
      'vaneMotion(turningPointsDeg)',
      points.length,
      2,
      'the vane must swing past the wind once',
    );
  }
  for (const [i, point] of points.entries()) {
    requireFinite(point, `vaneMotion(turningPointsDeg[${i}])`, '[deg]');
    requireFinite(times[i]!, `vaneMotion(timesS[${i}])`, '[s]');
    if (i === 0) continue;
    if (times[i]! <= times[i - 1]!)
      throw badReading(`vaneMotion(timesS[${i}])`, times[i], `after ${times[i - 1]} s`);
    const back = point * points[i - 1]! < 0 && Math.abs(point) < Math.abs(points[i - 1]!);
    if (!back) throw noOvershoot(`${points[i - 1]}° then ${point}°`);
  }
}

function noOvershoot(got: string): VanewrightError {
  return new VanewrightError({
    code: 'wind/no-overshoot',
    what: 'The vane does not swing past the wind and back in smaller and smaller swings.',
    where: 'vaneMotion(turningPointsDeg)',
    got,
    allowed: 'turning points on alternate sides, each smaller than the one before',
    fix: 'Release at 10° in a steadier stream, and give angles from where the vane came to rest.',
  });
}

function releaseTooWide(releaseDeg: Degrees): Caution {
  return {
    code: 'wind/release-too-wide',
    what: 'The vane was released too far off the wind for the test to be valid.',
    where: 'vaneMotion(turningPointsDeg[0])',
    got: `${Math.abs(releaseDeg)}°`,
    allowed: `up to ${LARGEST_RELEASE_DEG}°`,
    fix: 'Release at 10°.',
  };
}
