import { drawnOf, type DiscSpec } from '../../disc/index.ts';
import type { HeadPlan } from '../../head/index.ts';
import { switchPlaces } from './switchShifts.ts';

/**
 * The disc whose drawn edges make up for thresholds away from half light, so that every window reads as wide as its step.
 *
 * A photoresistor calls a channel lit before half of the spot is open, which widens every window by twice its bias. Windows
 * are drawn so much narrower, and by what the process adds to them too.
 *
 * @param head - A design as drawn without it.
 * @returns The disc to be planned anew: same sizes, other drawing. [mm]
 * @source derived: windows read wider by growth + 2 x, T(x) being the light halfway between both thresholds.
 * @check src/core/proof/budget/edgeCorrection.test.ts
 */
export function correctedDisc(head: HeadPlan): DiscSpec {
  const { spec } = head.disc;
  const radii = head.channels.map(({ radiusMm }) => radiusMm);
  const middle = radii.reduce((sum, radius) => sum + radius, 0) / radii.length;
  const readWiderMm = 2 * switchPlaces(head, middle).biasMm;
  if (!Number.isFinite(readWiderMm)) return spec;
  const drawn = drawnOf(spec);
  const { windowGrowthMm } = spec.process;
  const { widthMm, depthMm } = spec.notch;
  return {
    ...spec,
    // The index notch is drawn with the same edges, and shall come out as wide as it was meant.
    notch: { widthMm: widthMm > 0 ? widthMm + Math.max(0, readWiderMm) : 0, depthMm },
    process: { ...spec.process, windowGrowthMm: -readWiderMm },
    drawn: { ...drawn, edgeLossMm: drawn.edgeLossMm + (readWiderMm + windowGrowthMm) / 2 },
  };
}
