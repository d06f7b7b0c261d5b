import normalQuantile from '@stdlib/stats-base-dists-normal-quantile';
import { requireAtLeast } from '../refusal.ts';

/** Level of every interval given here. [-] */
export const CONFIDENCE = 0.95;

/** From here on the expansion in 1/ν is right to 1e-9; below, the finite sum is short. [-] */
const MANY = 200;

/**
 * Student's factor for a two-sided 95 % interval.
 *
 * @param freedom - Degrees of freedom; a part of one is left out, which is the safe side. [-], ≥ 1
 * @returns Times the standard error to either side: 12.706 for 1, 1.960 for very many. [-]
 * @throws `wind/bad-reading` when below 1 or not finite.
 * @source M. Abramowitz, I. A. Stegun, Handbook of Mathematical Functions, 26.7.3 and 26.7.4 (finite sums),
 *   26.7.5 (expansion).
 * @check test/published/student-t/student.test.ts
 */
export function studentFactor(freedom: number): number {
  requireAtLeast(freedom, 1, 'studentFactor(freedom)', '[-]');
  const whole = Math.floor(freedom);
  return whole > MANY ? factorOfMany(whole) : factorOfFew(whole);
}

/** Expansion about the normal quantile. */
function factorOfMany(freedom: number): number {
  const z = normalQuantile((1 + CONFIDENCE) / 2, 0, 1);
  const terms = [
    z,
    (z ** 3 + z) / 4,
    (5 * z ** 5 + 16 * z ** 3 + 3 * z) / 96,
    (3 * z ** 7 + 19 * z ** 5 + 17 * z ** 3 - 15 * z) / 384,
  ];
  return terms.reduce((sum, term, power) => sum + term / freedom ** power, 0);
}

/** Angle whose tangent times √ν is the factor, found by halving: the share within it rises steadily. */
function factorOfFew(freedom: number): number {
  let [low, high] = [0, Math.PI / 2];
  for (let middle = high / 2; middle > low && middle < high; middle = (low + high) / 2) {
    if (shareWithin(middle, freedom) < CONFIDENCE) low = middle;
    else high = middle;
  }
  return Math.tan(high) * Math.sqrt(freedom);
}

/** Share of the distribution within ±t, where the angle is atan(t/√ν). [-] */
function shareWithin(angle: number, freedom: number): number {
  const [sine, cosine] = [Math.sin(angle), Math.cos(angle)];
  const isOdd = freedom % 2 === 1;
  let term = isOdd ? cosine : 1;
  let sum = 0;
  for (let power = isOdd ? 1 : 0; power <= freedom - 2; power += 2) {
    sum += term;
    term *= ((power + 1) / (power + 2)) * cosine ** 2;
  }
  return isOdd ? (2 / Math.PI) * (angle + sine * sum) : sine * sum;
}
