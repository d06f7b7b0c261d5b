import { noVariation, requireAtLeast, requireFinite, requirePositive } from '../refusal.ts';
import { heightCautions, type ProfileSpeed } from './heights.ts';

/** Height below which the power law is not used. [m]; common practice, from memory */
const LEAST_HEIGHT_M = 2;

/**
 * Speed at another height by the power law, a rule of thumb with no theory behind it.
 *
 * @param speedMPerS - At the measured height. [m/s], ≥ 0
 * @param heights - Measured and wanted, above ground. [m], > 0
 * @param exponent - Shear exponent, 1/7 over smooth land, 0.2 over farmland. [-], finite
 * @returns Speed, with cautions where the law is stretched. [m/s]
 * @throws `wind/bad-reading` when a number is out of range.
 * @source P. Jain, Wind Energy Engineering, ch. 3 (power law, shear).
 * @check test/published/jain-weibull/profile.test.ts
 */
export function powerProfile(
  speedMPerS: number,
  heights: { readonly fromM: number; readonly toM: number },
  exponent: number,
): ProfileSpeed {
  requireAtLeast(speedMPerS, 0, 'powerProfile(speedMPerS)', 'm/s');
  requirePositive(heights.fromM, 'powerProfile(heights.fromM)', 'm');
  requirePositive(heights.toM, 'powerProfile(heights.toM)', 'm');
  requireFinite(exponent, 'powerProfile(exponent)', '[-]');
  return {
    speedMPerS: speedMPerS * (heights.toM / heights.fromM) ** exponent,
    cautions: heightCautions(heights.fromM, heights.toM, LEAST_HEIGHT_M),
  };
}

/**
 * Shear exponent from mean speeds at two heights.
 *
 * @param low - Lower height and its mean speed. [m], [m/s], > 0
 * @param high - Higher height and its mean speed. [m], [m/s], > 0
 * @returns Exponent. [-]
 * @throws `wind/no-variation` when the heights are equal; `wind/bad-reading`.
 * @source as `powerProfile`, solved for the exponent.
 * @check test/published/jain-weibull/profile.test.ts
 */
export function shearExponent(
  low: { readonly heightM: number; readonly speedMPerS: number },
  high: { readonly heightM: number; readonly speedMPerS: number },
): number {
  for (const [name, { heightM, speedMPerS }] of Object.entries({ low, high })) {
    requirePositive(heightM, `shearExponent(${name}.heightM)`, 'm');
    requirePositive(speedMPerS, `shearExponent(${name}.speedMPerS)`, 'm/s');
  }
  if (low.heightM === high.heightM) throw noVariation('shearExponent(heightM)', low.heightM, 'm');
  return Math.log(high.speedMPerS / low.speedMPerS) / Math.log(high.heightM / low.heightM);
}
