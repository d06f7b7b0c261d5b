import type { DiscPlan } from '../discPlan.ts';
import { boreCircleMm } from '../layout/bore.ts';
import { notchSector } from '../layout/notchSector.ts';
import { polarGrid, type PolarGrid } from './polarGrid.ts';

/**
 * The material of a disc, from the bore's circle to the rim, as exact polar cells; on film, the dark print.
 *
 * Row 0 is the hub. A flat of the bore lies inside its circle and is left out.
 *
 * @param plan - A disc plan, with or without ribs.
 */
export function materialGrid(plan: DiscPlan): PolarGrid {
  const notch = notchSector(plan.spec);
  const windows = plan.tracks.flatMap((track) => track.windows);
  const ring = { innerRadiusMm: boreCircleMm(plan.spec.bore) / 2, outerRadiusMm: plan.spec.diameterMm / 2 };
  return polarGrid(ring, notch ? [...windows, notch] : windows, plan.ribs);
}
