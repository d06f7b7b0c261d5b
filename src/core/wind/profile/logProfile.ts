import { requireAtLeast, requirePositive } from '../refusal.ts';
import { heightCautions, heightTooLow, type ProfileSpeed } from './heights.ts';

/** Ground under a logarithmic profile. */
export interface Ground {
  /** Roughness length z0. [m], > 0 */
  readonly roughnessM: number;
  /** Height by which dense obstacles lift the profile; 0 over open ground. [m], ≥ 0 */
  readonly displacementM: number;
}

/** Roughness lengths above which single obstacles no longer matter. [-]; common practice, from memory */
const CLEAR_OF_OBSTACLES = 20;

/**
 * Speed at another height by the logarithmic law, for a sky neither heating nor cooling the ground.
 *
 * @param speedMPerS - At the measured height. [m/s], ≥ 0
 * @param heights - Measured and wanted, above ground. [m], > 0
 * @param ground - Roughness and displacement. [m]
 * @returns Speed, with cautions where the law is stretched. [m/s]
 * @throws `wind/height-too-low` when a height is not above roughness and displacement; `wind/bad-reading`.
 * @source P. Jain, Wind Energy Engineering, ch. 3 (log law over roughness length).
 * @check test/published/jain-weibull/profile.test.ts
 */
export function logProfile(
  speedMPerS: number,
  heights: { readonly fromM: number; readonly toM: number },
  ground: Ground,
): ProfileSpeed {
  const { roughnessM, displacementM } = ground;
  requireAtLeast(speedMPerS, 0, 'logProfile(speedMPerS)', 'm/s');
  requirePositive(roughnessM, 'logProfile(ground.roughnessM)', 'm');
  requireAtLeast(displacementM, 0, 'logProfile(ground.displacementM)', 'm');
  const floor = roughnessM + displacementM;
  const factorAt = (height: number, name: string): number => {
    requirePositive(height, `logProfile(heights.${name})`, 'm');
    if (height <= floor) throw heightTooLow(`logProfile(heights.${name})`, height, floor);
    return Math.log((height - displacementM) / roughnessM);
  };
  const from = factorAt(heights.fromM, 'fromM');
  const to = factorAt(heights.toM, 'toM');
  const leastM = displacementM + CLEAR_OF_OBSTACLES * roughnessM;
  return {
    speedMPerS: (speedMPerS * to) / from,
    cautions: heightCautions(heights.fromM, heights.toM, leastM),
  };
}
