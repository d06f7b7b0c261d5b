import gamma from '@stdlib/math-base-special-gamma';
import { badReading, requireAtLeast, requirePositive } from '../refusal.ts';

/** Two-parameter Weibull distribution of wind speed. */
export interface Weibull {
  /** Shape k; 2 is the Rayleigh distribution. [-], > 0 */
  readonly shape: number;
  /** Scale A (also called c). [m/s], > 0 */
  readonly scaleMPerS: number;
}

/** @throws `wind/bad-reading` when shape or scale is not above 0. */
export function requireWeibull({ shape, scaleMPerS }: Weibull): void {
  requirePositive(shape, 'weibull.shape', '[-]');
  requirePositive(scaleMPerS, 'weibull.scaleMPerS', 'm/s');
}

/**
 * Mean of the n-th power of speed, A^n Γ(1 + n/k): n = 1 is the mean speed, n = 3 the mean cube.
 *
 * @param weibull - Distribution.
 * @param power - n. [-], ≥ 0
 * @returns [(m/s)^n]
 * @throws `wind/bad-reading` when a number is out of range.
 * @source W. Weibull, J. Appl. Mech. 18 (1951) 293; P. Jain, Wind Energy Engineering, ch. 3.
 * @check test/published/jain-weibull/weibull.test.ts
 */
export function weibullMoment(weibull: Weibull, power: number): number {
  requireWeibull(weibull);
  requireAtLeast(power, 0, 'weibullMoment(power)', '[-]');
  return weibull.scaleMPerS ** power * gamma(1 + power / weibull.shape);
}

/**
 * Most frequent speed, A ((k-1)/k)^(1/k); 0 for a shape of 1 or less.
 *
 * @returns [m/s]
 * @throws `wind/bad-reading` as `requireWeibull`.
 * @source P. Jain, Wind Energy Engineering, Table 3-1.
 * @check test/published/jain-weibull/weibull.test.ts
 */
export function weibullMode(weibull: Weibull): number {
  requireWeibull(weibull);
  const { shape, scaleMPerS } = weibull;
  return shape <= 1 ? 0 : scaleMPerS * ((shape - 1) / shape) ** (1 / shape);
}

/**
 * Speed below which the wind stays for a share of the time; a share of 0.5 gives the median.
 *
 * @param share - [-], 0 ≤ share < 1
 * @returns [m/s]
 * @throws `wind/bad-reading` when the share is outside its range.
 * @source W. Weibull, J. Appl. Mech. 18 (1951) 293 (inverse of the distribution function).
 * @check test/published/jain-weibull/weibull.test.ts
 */
export function weibullQuantile(weibull: Weibull, share: number): number {
  requireWeibull(weibull);
  if (!(share >= 0 && share < 1))
    throw badReading('weibullQuantile(share)', share, '0 or more and below 1 [-]');
  return weibull.scaleMPerS * (-Math.log1p(-share)) ** (1 / weibull.shape);
}

/**
 * Share of the time below a speed.
 *
 * @param speedMPerS - [m/s], ≥ 0
 * @returns [-], 0..1
 * @throws `wind/bad-reading` when the speed is negative or not finite.
 * @source W. Weibull, J. Appl. Mech. 18 (1951) 293.
 * @check test/published/jain-weibull/weibull.test.ts
 */
export function weibullShareBelow(weibull: Weibull, speedMPerS: number): number {
  requireWeibull(weibull);
  requireAtLeast(speedMPerS, 0, 'weibullShareBelow(speedMPerS)', 'm/s');
  return -Math.expm1(-((speedMPerS / weibull.scaleMPerS) ** weibull.shape));
}
