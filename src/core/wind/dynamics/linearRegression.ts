import { noVariation, requireFinite, tooFewReadings, unequalLengths } from '../refusal.ts';

/** A straight line through points, and how sure it is. */
export interface LinearFit {
  /** y at x = 0. [unit of y] */
  readonly intercept: number;
  /** [unit of y over unit of x] */
  readonly slope: number;
  /** Standard errors of both. */
  readonly interceptError: number;
  readonly slopeError: number;
  /** Covariance of intercept and slope; negative when x is positive. */
  readonly covariance: number;
  /** Standard deviation of the residuals, with n - 2 degrees of freedom. [unit of y] */
  readonly residualDeviation: number;
  /** Correlation r, with the sign of the slope; 0 when y never changes. [-], -1..1 */
  readonly correlation: number;
  /** y less the line at each point, in order. [unit of y] */
  readonly residuals: readonly number[];
}

/**
 * Least-squares line with standard errors, computed about the means so that no digits are lost.
 *
 * The errors hold for points that scatter independently: 10-minute means that follow each other do not.
 *
 * @param x - Known without error. [any unit], n ≥ 3, not all equal
 * @param y - [any unit], n the same
 * @throws `wind/unequal-lengths`, `wind/too-few-readings`, `wind/no-variation`, `wind/bad-reading`.
 * @source N. R. Draper, H. Smith, Applied Regression Analysis, ch. 1 (value from memory).
 * @check test/published/nist-norris/linearRegression.test.ts
 */
export function linearRegression(x: readonly number[], y: readonly number[]): LinearFit {
  const n = x.length;
  if (n !== y.length) throw unequalLengths('linearRegression(x, y)', n, y.length);
  if (n < 3) throw tooFewReadings('linearRegression(x)', n, 3, 'two points fit any line');
  for (let i = 0; i < n; i++) {
    requireFinite(x[i]!, `linearRegression(x[${i}])`, '');
    requireFinite(y[i]!, `linearRegression(y[${i}])`, '');
  }
  const [meanX, meanY] = [meanOf(x), meanOf(y)];
  const awayX = x.map((value) => value - meanX);
  const awayY = y.map((value) => value - meanY);
  if (x.every((value) => value === x[0])) throw noVariation('linearRegression(x)', x[0]!, '');
  const sxx = product(awayX, awayX);
  const syy = product(awayY, awayY);
  const sxy = product(awayX, awayY);
  const slope = sxy / sxx;
  const residuals = awayY.map((value, i) => value - slope * awayX[i]!);
  const variance = product(residuals, residuals) / (n - 2);
  return {
    intercept: meanY - slope * meanX,
    slope,
    interceptError: Math.sqrt(variance * (1 / n + meanX ** 2 / sxx)),
    slopeError: Math.sqrt(variance / sxx),
    covariance: -(variance * meanX) / sxx || 0, // || 0: never -0
    residualDeviation: Math.sqrt(variance),
    correlation: syy > 0 ? Math.max(-1, Math.min(1, sxy / Math.sqrt(sxx * syy))) : 0,
    residuals,
  };
}

/**
 * Value of the line at a point, with the standard error of the line there and that of a single new reading.
 *
 * @param fit - Fitted line.
 * @param x - [unit of x]
 * @returns Value and errors. [unit of y]
 * @throws `wind/bad-reading` when x is not finite.
 * @source as `linearRegression`; variance of a sum of correlated estimates.
 * @check src/core/wind/dynamics/linearRegression.test.ts
 */
export function lineAt(
  fit: LinearFit,
  x: number,
): { readonly value: number; readonly lineError: number; readonly readingError: number } {
  requireFinite(x, 'lineAt(x)', '');
  const variance = fit.interceptError ** 2 + 2 * x * fit.covariance + (x * fit.slopeError) ** 2;
  const lineError = Math.sqrt(Math.max(0, variance)); // rounding can fall below 0 where the line is exact
  return {
    value: fit.intercept + fit.slope * x,
    lineError,
    readingError: Math.hypot(lineError, fit.residualDeviation),
  };
}

function meanOf(values: readonly number[]): number {
  const rough = values.reduce((sum, value) => sum + value, 0) / values.length;
  return rough + values.reduce((sum, value) => sum + (value - rough), 0) / values.length; // mends the rounding
}

function product(a: readonly number[], b: readonly number[]): number {
  return a.reduce((sum, value, i) => sum + value * b[i]!, 0);
}
