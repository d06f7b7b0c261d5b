import {
  badReading,
  noReadings,
  noVariation,
  requirePositive,
  tooFewReadings,
  unequalLengths,
} from '../refusal.ts';
import type { Interval } from '../uncertainty/interval.ts';
import { studentFactor } from '../uncertainty/student.ts';
import type { Weibull } from './weibull.ts';

/** A fitted Weibull distribution and how sure it is. */
export interface WeibullFit extends Weibull {
  /** Standard errors. [-], [m/s] */
  readonly shapeError: number;
  readonly scaleErrorMPerS: number;
  /** 95 % intervals. [-], [m/s] */
  readonly shapeInterval: Interval;
  readonly scaleIntervalMPerS: Interval;
  /** Natural logarithm of the likelihood of the speeds above 0. [-] */
  readonly logLikelihood: number;
  /** Weight of the speeds above 0, which the fit rests on. [-] */
  readonly readings: number;
  /** Share of calms (speed 0), which no Weibull distribution has. [-] */
  readonly calmShare: number;
}

/** How the speeds count. */
export interface WeibullFitChoice {
  /** How often each speed occurred; once each unless given. [-], n as the speeds */
  readonly weights?: readonly number[];
  /**
   * Readings that are independent of each other, for the errors; all unless given. Samples that follow each
   * other closely are not: a year at 1 Hz holds some hundred. [-], > 0
   */
  readonly independentReadings?: number;
}

/**
 * Weibull distribution of speeds by maximum likelihood, calms left out and reported.
 *
 * @param speeds - Speeds, 0 for a calm. [m/s], each ≥ 0, at least two different above 0
 * @param choice - Weights, and how many readings are independent. [-]
 * @returns Shape, scale, errors from the observed information, 95 % intervals on a logarithmic scale.
 * @throws `wind/no-readings`, `wind/too-few-readings`, `wind/no-variation`, `wind/bad-reading`,
 *   `wind/unequal-lengths`.
 * @source A. C. Cohen, Technometrics 7 (1965) 579 (maximum likelihood equations of the Weibull distribution).
 * @check test/published/fitdistrplus-groundbeef/weibullFit.test.ts
 */
export function weibullFit(speeds: readonly number[], choice: WeibullFitChoice = {}): WeibullFit {
  const { logs, weights, calms } = windOnly(speeds, choice.weights);
  const total = weights.reduce((sum, weight) => sum + weight, 0);
  const top = logs.reduce((most, log) => Math.max(most, log));
  const depths = logs.map((log) => log - top); // 0 at the highest speed: no power overflows
  const meanDepth = depths.reduce((sum, depth, i) => sum + depth * weights[i]!, 0) / total;
  const shape = fittedShape(depths, weights, meanDepth);
  const logScale = top + Math.log(powerSums(depths, weights, shape).s0 / total) / shape;
  const scale = Math.exp(logScale);
  const z = powerSums(
    logs.map((log) => log - logScale),
    weights,
    shape,
  );
  const independent = choice.independentReadings ?? total;
  requirePositive(independent, 'weibullFit(choice.independentReadings)', 'readings');
  // Inverse of the observed information of shape and scale, at the maximum where z.s0 = total.
  const shapeInformation = total / shape ** 2 + z.s2 - z.s1 ** 2 / total;
  const inflation = total / independent;
  const shapeError = Math.sqrt(inflation / shapeInformation);
  const scaleVariance = (1 / total + z.s1 ** 2 / (total ** 2 * shapeInformation)) / shape ** 2;
  const scaleErrorMPerS = scale * Math.sqrt(inflation * scaleVariance);
  return {
    shape,
    scaleMPerS: scale,
    shapeError,
    scaleErrorMPerS,
    shapeInterval: logInterval(shape, shapeError, independent),
    scaleIntervalMPerS: logInterval(scale, scaleErrorMPerS, independent),
    logLikelihood: total * (Math.log(shape) - logScale + (shape - 1) * (meanDepth + top - logScale)) - z.s0,
    readings: total,
    calmShare: calms / (calms + total),
  };
}

interface WindOnly {
  readonly logs: readonly number[];
  readonly weights: readonly number[];
  readonly calms: number;
}

/** Logarithms of the speeds above 0 with their weights, and the weight of the calms. */
function windOnly(speeds: readonly number[], given: readonly number[] | undefined): WindOnly {
  const weights = given ?? speeds.map(() => 1);
  if (weights.length !== speeds.length) {
    throw unequalLengths('weibullFit(speeds, choice.weights)', speeds.length, weights.length);
  }
  if (speeds.length === 0) throw noReadings('weibullFit(speeds)');
  for (const [i, speed] of speeds.entries()) {
    const weight = weights[i]!;
    if (!(speed >= 0 && Number.isFinite(speed))) {
      throw badReading(`weibullFit(speeds[${i}])`, speed, 'a finite speed of 0 m/s or more');
    }
    if (!(weight >= 0 && Number.isFinite(weight))) {
      throw badReading(`weibullFit(choice.weights[${i}])`, weight, 'a finite weight of 0 or more');
    }
  }
  const used = [...speeds.keys()].filter((i) => speeds[i]! > 0 && weights[i]! > 0);
  if (used.length < 2) {
    throw tooFewReadings('weibullFit(speeds)', used.length, 2, 'a distribution needs two speeds above 0 m/s');
  }
  const first = speeds[used[0]!]!;
  if (used.every((i) => speeds[i] === first)) throw noVariation('weibullFit(speeds)', first, 'm/s');
  const calms = speeds.reduce((sum, speed, i) => (speed === 0 ? sum + weights[i]! : sum), 0);
  return { logs: used.map((i) => Math.log(speeds[i]!)), weights: used.map((i) => weights[i]!), calms };
}

/** Sums of z^k, z^k ln z and z^k (ln z)², from ln z. */
function powerSums(
  logs: readonly number[],
  weights: readonly number[],
  shape: number,
): { readonly s0: number; readonly s1: number; readonly s2: number } {
  let s0 = 0;
  let s1 = 0;
  let s2 = 0;
  for (const [i, log] of logs.entries()) {
    const power = weights[i]! * Math.exp(shape * log);
    s0 += power;
    s1 += power * log;
    s2 += power * log * log;
  }
  return { s0, s1, s2 };
}

/** Root of the shape equation, which rises steadily: Newton's steps, kept within a bracket. */
function fittedShape(depths: readonly number[], weights: readonly number[], meanDepth: number): number {
  let low = 0;
  let high = Infinity;
  let shape = 2;
  for (let round = 0; round < 200; round++) {
    const { s0, s1, s2 } = powerSums(depths, weights, shape);
    const value = s1 / s0 - 1 / shape - meanDepth;
    if (value > 0) high = shape;
    else low = shape;
    const newton = shape - value / (s2 / s0 - (s1 / s0) ** 2 + 1 / shape ** 2);
    const next = newton > low && newton < high ? newton : high === Infinity ? shape * 2 : (low + high) / 2;
    if (Math.abs(next - shape) <= 1e-15 * shape) return next;
    shape = next;
  }
  return shape;
}

/** Interval that cannot fall below 0. */
function logInterval(value: number, error: number, readings: number): Interval {
  const factor = Math.exp((studentFactor(Math.max(1, readings - 1)) * error) / value);
  return { low: value / factor, high: value * factor };
}
