import { VanewrightError } from '../../error/index.ts';
import { type Caution, requireAtLeast, requirePositive, unequalLengths } from '../refusal.ts';
import { lineAt, type LinearFit, linearRegression } from './linearRegression.ts';

/** Speed from the rate of the cups' pulses. */
export interface CupCalibration {
  /** A: speed at rate 0 by the line, where the cups stand in truth. [m/s] */
  readonly offsetMPerS: number;
  /** B: wind path a pulse. [m] */
  readonly pathPerPulseM: number;
  /** The line itself, with standard errors. [m/s] over [Hz] */
  readonly line: LinearFit;
  /** Standard error of estimate: scatter of the points about the line. [m/s] */
  readonly scatterMPerS: number;
  /** Largest residual. [m/s] */
  readonly largestResidualMPerS: number;
  /** Speeds of the points; outside them the line is a guess. [m/s] */
  readonly range: { readonly lowMPerS: number; readonly highMPerS: number };
  /** Points left out because the cups stood still. [-] */
  readonly standing: number;
  readonly cautions: readonly Caution[];
}

/** Highest over lowest speed that pins down offset and slope apart. [-]; own choice, no source */
const WIDE_ENOUGH = 2;

/**
 * Line speed = A + B · rate through points measured against a reference.
 *
 * The scatter is stated rather than passed or failed: a laboratory asks r > 0.99995, which over 4..16 m/s is a
 * scatter of 0.037 m/s, and no calibration on a car or beside a second instrument reaches it.
 *
 * @param rates - Pulses a second at each point; 0 = standing, left out. [Hz], each ≥ 0
 * @param speeds - Speed of the reference at each point. [m/s], each ≥ 0, n the same
 * @throws `wind/too-few-readings` with fewer than 3 turning points, `wind/no-variation`, `wind/slope-not-rising`,
 *   `wind/unequal-lengths`, `wind/bad-reading`.
 * @source Practice of tunnel calibration (linear regression over 4..16 m/s), value from memory;
 *   ISO 17713-1:2007 names the quantity.
 * @check src/core/wind/dynamics/cupCalibration.test.ts
 */
export function cupCalibration(rates: readonly number[], speeds: readonly number[]): CupCalibration {
  if (rates.length !== speeds.length) {
    throw unequalLengths('cupCalibration(rates, speeds)', rates.length, speeds.length);
  }
  for (const [i, rate] of rates.entries()) {
    requireAtLeast(rate, 0, `cupCalibration(rates[${i}])`, 'Hz');
    requireAtLeast(speeds[i]!, 0, `cupCalibration(speeds[${i}])`, 'm/s');
  }
  const turning = [...rates.keys()].filter((i) => rates[i]! > 0);
  const used = turning.map((i) => speeds[i]!);
  const line = linearRegression(
    turning.map((i) => rates[i]!),
    used,
  );
  if (!(line.slope > 0)) throw slopeNotRising(line.slope);
  const range = {
    lowMPerS: used.reduce((a, b) => Math.min(a, b)),
    highMPerS: used.reduce((a, b) => Math.max(a, b)),
  };
  return {
    offsetMPerS: line.intercept,
    pathPerPulseM: line.slope,
    line,
    scatterMPerS: line.residualDeviation,
    largestResidualMPerS: line.residuals.reduce((most, residual) => Math.max(most, Math.abs(residual)), 0),
    range,
    standing: rates.length - turning.length,
    cautions: range.highMPerS < WIDE_ENOUGH * range.lowMPerS ? [narrowRange(range)] : [],
  };
}

/**
 * Speed of a pulse rate; standing cups give 0, never the offset.
 *
 * @param calibration - Fitted line.
 * @param rateHz - Pulses a second. [Hz], ≥ 0
 * @returns Speed, and the standard error of a single reading; `null` for standing cups. [m/s]
 * @throws `wind/bad-reading` when the rate is negative or not finite.
 * @source as `cupCalibration`.
 * @check src/core/wind/dynamics/cupCalibration.test.ts
 */
export function speedOfRate(
  calibration: CupCalibration,
  rateHz: number,
): { readonly speedMPerS: number; readonly errorMPerS: number | null } {
  requireAtLeast(rateHz, 0, 'speedOfRate(rateHz)', 'Hz');
  if (rateHz === 0) return { speedMPerS: 0, errorMPerS: null };
  const { value, readingError } = lineAt(calibration.line, rateHz);
  return { speedMPerS: Math.max(0, value), errorMPerS: readingError }; // a negative offset makes no negative wind
}

/**
 * Cup factor: wind speed over the speed of the cups' centres, between 2 and a little over 3 as a rule.
 *
 * @param cups - Path a pulse [m], pulses a turn [-], radius to the cups' centres [mm]; all > 0
 * @returns [-]; half or twice the usual value hints at pulses counted wrongly
 * @throws `wind/bad-reading` when one is not above 0.
 * @source Definition; usual range is common practice, no source.
 * @check src/core/wind/dynamics/cupCalibration.test.ts
 */
export function cupFactor(cups: {
  readonly pathPerPulseM: number;
  readonly pulsesPerTurn: number;
  readonly radiusMm: number;
}): number {
  requirePositive(cups.pathPerPulseM, 'cupFactor(pathPerPulseM)', 'm');
  requirePositive(cups.pulsesPerTurn, 'cupFactor(pulsesPerTurn)', '[-]');
  requirePositive(cups.radiusMm, 'cupFactor(radiusMm)', 'mm');
  return (cups.pathPerPulseM * cups.pulsesPerTurn) / ((2 * Math.PI * cups.radiusMm) / 1000);
}

/**
 * Highest speed that still counts in full when edges closer than the quiet time are ignored.
 *
 * @param calibration - Offset [m/s] and path a pulse [m]
 * @param quietMs - Time after an edge in which others are ignored. [ms], > 0
 * @returns [m/s]
 * @throws `wind/bad-reading` when the time is not above 0.
 * @source Derived: one pulse a quiet time.
 * @check src/core/wind/dynamics/cupCalibration.test.ts
 */
export function speedCapOfQuiet(
  calibration: { readonly offsetMPerS: number; readonly pathPerPulseM: number },
  quietMs: number,
): number {
  requirePositive(quietMs, 'speedCapOfQuiet(quietMs)', 'ms');
  return calibration.offsetMPerS + (calibration.pathPerPulseM * 1000) / quietMs;
}

function slopeNotRising(slope: number): VanewrightError {
  return new VanewrightError({
    code: 'wind/slope-not-rising',
    what: 'The cups do not turn faster in more wind by these points.',
    where: 'cupCalibration(rates, speeds)',
    got: `${slope} m of wind a pulse`,
    allowed: 'above 0 m',
    fix: 'Check that the two clocks agree and that rates and speeds are not swapped.',
  });
}

function narrowRange({ lowMPerS, highMPerS }: CupCalibration['range']): Caution {
  return {
    code: 'wind/narrow-range',
    what: 'The speeds lie close together, so offset and slope cannot be told apart well.',
    where: 'cupCalibration(speeds)',
    got: `${lowMPerS} m/s to ${highMPerS} m/s`,
    allowed: `highest at least ${WIDE_ENOUGH} times the lowest`,
    fix: `Add points up to ${WIDE_ENOUGH * lowMPerS} m/s or more.`,
  };
}
