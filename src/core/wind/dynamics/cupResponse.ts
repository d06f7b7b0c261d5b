import { requireAtLeast, requirePositive } from '../refusal.ts';

/**
 * Distance constant of cups from the time they take to follow a step of wind.
 *
 * @param speedMPerS - Wind speed of the test. [m/s], > 0
 * @param timeConstantS - Time to 63.2 % of the step. [s], > 0
 * @returns Length of wind that passes in that time, the same at every speed. [m]
 * @throws `wind/bad-reading` when one is not above 0.
 * @source ISO 17713-1:2007 (distance constant); first-order response.
 * @check test/published/vane-test-method/dynamics.test.ts
 */
export function distanceConstant(speedMPerS: number, timeConstantS: number): number {
  requirePositive(speedMPerS, 'distanceConstant(speedMPerS)', 'm/s');
  requirePositive(timeConstantS, 'distanceConstant(timeConstantS)', 's');
  return speedMPerS * timeConstantS;
}

/**
 * Part of a step of wind that cups have followed after a length of wind has passed; 63.2 % after one constant.
 *
 * @param passedM - Length of wind since the step. [m], ≥ 0
 * @param distanceConstantM - As `distanceConstant` gives it. [m], > 0
 * @returns [-], 0..1
 * @throws `wind/bad-reading` when out of range.
 * @source as `distanceConstant`.
 * @check test/published/vane-test-method/dynamics.test.ts
 */
export function cupRecovery(passedM: number, distanceConstantM: number): number {
  requireAtLeast(passedM, 0, 'cupRecovery(passedM)', 'm');
  requirePositive(distanceConstantM, 'cupRecovery(distanceConstantM)', 'm');
  return -Math.expm1(-passedM / distanceConstantM);
}
