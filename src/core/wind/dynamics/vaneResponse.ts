import { badReading, requireAtLeast, requirePositive } from '../refusal.ts';

function requireDamping(damping: number, where: string): void {
  if (!(damping > 0 && damping < 1)) throw badReading(where, damping, 'above 0 and below 1 [-]');
}

/**
 * Damping ratio of a vane from its overshoot.
 *
 * @param overshoot - Half-swing over the half-swing before it, on the other side. [-], 0 < overshoot < 1
 * @returns ζ = ln(1/Ω) / √(π² + ln²(1/Ω)). [-], 0..1
 * @throws `wind/bad-reading` when the overshoot is not between 0 and 1.
 * @source Second-order response; ratio formula of ASTM D5366 (value from memory).
 * @check test/published/vane-test-method/dynamics.test.ts
 */
export function dampingFromOvershoot(overshoot: number): number {
  if (!(overshoot > 0 && overshoot < 1)) {
    throw badReading('dampingFromOvershoot(overshoot)', overshoot, 'above 0 and below 1 [-]');
  }
  const decrement = -Math.log(overshoot);
  return decrement / Math.hypot(Math.PI, decrement);
}

/**
 * Overshoot of a vane from its damping ratio, exp(-πζ/√(1-ζ²)).
 *
 * @param damping - ζ. [-], 0 < ζ < 1
 * @returns [-], 0..1
 * @throws `wind/bad-reading` when the damping is not between 0 and 1.
 * @source as `dampingFromOvershoot`.
 * @check test/published/vane-test-method/dynamics.test.ts
 */
export function overshootFromDamping(damping: number): number {
  requireDamping(damping, 'overshootFromDamping(damping)');
  return Math.exp((-Math.PI * damping) / Math.sqrt(1 - damping ** 2));
}

/**
 * Natural wavelength from the damped one that a release test shows, λn = λd √(1-ζ²).
 *
 * @param dampedWavelengthM - Wind speed times the period of the swings. [m], > 0
 * @param damping - ζ. [-], 0 < ζ < 1
 * @returns [m]
 * @throws `wind/bad-reading` when out of range.
 * @source as `dampingFromOvershoot`.
 * @check test/published/vane-test-method/dynamics.test.ts
 */
export function naturalWavelength(dampedWavelengthM: number, damping: number): number {
  requirePositive(dampedWavelengthM, 'naturalWavelength(dampedWavelengthM)', 'm');
  requireDamping(damping, 'naturalWavelength(damping)');
  return dampedWavelengthM * Math.sqrt(1 - damping ** 2);
}

/**
 * Deflection of a vane that is held off the wind and let go, as a part of where it was held.
 *
 * @param wavelengths - Length of wind passed since, in natural wavelengths. [-], ≥ 0
 * @param damping - ζ. [-], 0 < ζ < 1
 * @returns 1 at the release, negative on the other side. [-]
 * @throws `wind/bad-reading` when out of range.
 * @source Second-order response from rest.
 * @check test/published/vane-test-method/dynamics.test.ts
 */
export function releasedVane(wavelengths: number, damping: number): number {
  requireAtLeast(wavelengths, 0, 'releasedVane(wavelengths)', '[-]');
  requireDamping(damping, 'releasedVane(damping)');
  const root = Math.sqrt(1 - damping ** 2);
  const phase = 2 * Math.PI * wavelengths;
  return Math.exp(-damping * phase) * (Math.cos(root * phase) + (damping / root) * Math.sin(root * phase));
}

/**
 * Natural wavelength over delay distance, exactly; the rule of thumb 6.0 - 2.4ζ is up to 1.8 % low.
 *
 * @param damping - ζ. [-], 0 < ζ < 1
 * @returns λn / D, where D is the wind that passes until half the deflection is made good. [-]
 * @throws `wind/bad-reading` when out of range.
 * @source Root of the second-order response; rule of thumb by ASTM D5366 (value from memory).
 * @check test/published/vane-test-method/dynamics.test.ts
 */
export function wavelengthOverDelay(damping: number): number {
  requireDamping(damping, 'wavelengthOverDelay(damping)');
  let low = 0;
  let high = 0.5 / Math.sqrt(1 - damping ** 2); // first turning point, on the other side
  for (let middle = high / 2; middle > low && middle < high; middle = (low + high) / 2) {
    if (releasedVane(middle, damping) > 0.5) low = middle;
    else high = middle;
  }
  return 1 / high;
}
