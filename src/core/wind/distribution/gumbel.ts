import { noVariation, requireAtLeast, requireFinite, requirePositive, tooFewReadings } from '../refusal.ts';

/** Distribution of yearly highest speeds. */
export interface Gumbel {
  /** Most frequent yearly highest speed. [m/s] */
  readonly locationMPerS: number;
  /** [m/s], > 0 */
  readonly scaleMPerS: number;
}

/** Euler's constant. [-] */
const EULER = 0.577_215_664_901_532_9;

/**
 * Gumbel distribution of highest values by maximum likelihood.
 *
 * @param maxima - Highest speed of each year. [m/s], n ≥ 2, not all equal
 * @throws `wind/too-few-readings`, `wind/no-variation`, `wind/bad-reading`.
 * @source E. J. Gumbel, Statistics of Extremes, Columbia 1958 (maximum likelihood equations).
 * @check test/published/numpy-scipy/gumbel.test.ts
 */
export function gumbelFit(maxima: readonly number[]): Gumbel {
  for (const [i, most] of maxima.entries()) requireFinite(most, `gumbelFit(maxima[${i}])`, '[m/s]');
  if (maxima.length < 2) {
    throw tooFewReadings('gumbelFit(maxima)', maxima.length, 2, 'a distribution needs two yearly maxima');
  }
  const [least, mean] = [Math.min(...maxima), maxima.reduce((sum, most) => sum + most, 0) / maxima.length];
  const above = maxima.map((most) => most - least);
  if (above.every((height) => height === 0)) throw noVariation('gumbelFit(maxima)', least, 'm/s');
  // The scale is the root of a function that rises from -(mean - least) at 0: bisect, then the answer is exact.
  const residual = (scale: number): number => {
    const weights = above.map((height) => Math.exp(-height / scale));
    const total = weights.reduce((sum, weight) => sum + weight, 0);
    const weighted = above.reduce((sum, height, i) => sum + height * weights[i]!, 0) / total;
    return scale - (mean - least) + weighted;
  };
  let [low, high] = [0, mean - least];
  for (let middle = high / 2; middle > low && middle < high; middle = (low + high) / 2) {
    if (residual(middle) > 0) high = middle;
    else low = middle;
  }
  const meanWeight = above.reduce((sum, height) => sum + Math.exp(-height / high), 0) / maxima.length;
  return { locationMPerS: least - high * Math.log(meanWeight), scaleMPerS: high };
}

/**
 * Speed exceeded once in so many years on average, and its standard error from the number of years alone.
 *
 * @param gumbel - Fitted distribution. [m/s]
 * @param returnYears - Mean time between years that exceed it. [a], > 1
 * @param years - Yearly maxima that the fit rests on. [-], ≥ 2
 * @returns Speed and standard error. [m/s]
 * @throws `wind/bad-reading` when a number is out of range.
 * @source Gumbel (1958); error from the expected information, β²/n (1 + 6/π² (1 - γ + y)²), derived.
 * @check test/published/numpy-scipy/gumbel.test.ts
 */
export function gumbelReturn(
  { locationMPerS, scaleMPerS }: Gumbel,
  returnYears: number,
  years: number,
): { readonly speedMPerS: number; readonly standardErrorMPerS: number } {
  requireFinite(locationMPerS, 'gumbelReturn(gumbel.locationMPerS)', '[m/s]');
  requirePositive(scaleMPerS, 'gumbelReturn(gumbel.scaleMPerS)', 'm/s');
  requirePositive(returnYears - 1, 'gumbelReturn(returnYears - 1)', 'a');
  requireAtLeast(years, 2, 'gumbelReturn(years)', 'years');
  const y = -Math.log(-Math.log1p(-1 / returnYears));
  const inflation = 1 + (6 / Math.PI ** 2) * (1 - EULER + y) ** 2;
  return {
    speedMPerS: locationMPerS + scaleMPerS * y,
    standardErrorMPerS: scaleMPerS * Math.sqrt(inflation / years),
  };
}
