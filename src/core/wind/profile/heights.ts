import { VanewrightError } from '../../error/index.ts';
import type { Caution } from '../refusal.ts';

/** Speed carried from one height to another, with what must be said about it. */
export interface ProfileSpeed {
  readonly speedMPerS: number;
  /** Empty when both heights lie where the law is known to hold. */
  readonly cautions: readonly Caution[];
}

/** Height up to which surface-layer laws are used without further thought. [m]; common practice, from memory */
export const SURFACE_LAYER_M = 100;

/** Wanted height over measured height, above which the step is a long one. [-]; common practice, from memory */
export const FAR_STEP = 1.5;

/**
 * Cautions about a pair of heights. [m]
 *
 * @param fromM - Height measured at. [m]
 * @param toM - Height wanted. [m]
 * @param leastM - Height below which single obstacles matter more than the law. [m]
 */
export function heightCautions(fromM: number, toM: number, leastM: number): Caution[] {
  const cautions: Caution[] = [];
  for (const height of [fromM, toM]) {
    if (height >= leastM && height <= SURFACE_LAYER_M) continue;
    cautions.push({
      code: 'wind/height-beyond-law',
      what: 'The profile law is not reliable at this height.',
      where: 'profile.heightM',
      got: `${height} m`,
      allowed: `${leastM} m to ${SURFACE_LAYER_M} m`,
      fix: 'Measure at the height you want to know about, or state the result as a rough figure.',
    });
  }
  if (toM > FAR_STEP * fromM) {
    cautions.push({
      code: 'wind/far-step',
      what: 'The wanted height lies far above the measured one, so a small error of the law counts much.',
      where: 'profile.toHeightM',
      got: `${toM} m from ${fromM} m`,
      allowed: `up to ${FAR_STEP} times the measured height`,
      fix: `Measure at ${Math.ceil(toM / FAR_STEP)} m or higher.`,
    });
  }
  return cautions;
}

/** The height is not above the layer that the law leaves out. */
export function heightTooLow(where: string, heightM: number, leastM: number): VanewrightError {
  return new VanewrightError({
    code: 'wind/height-too-low',
    what: 'The logarithmic law has no wind at this height.',
    where,
    got: `${heightM} m`,
    allowed: `above ${leastM} m (roughness length and displacement together)`,
    fix: `Use a height well above ${leastM} m, or a smoother ground.`,
  });
}
