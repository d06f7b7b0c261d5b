import type { HeadPlan } from '../../head/index.ts';
import { sheetPoint } from '../../disc/index.ts';
import { circle, corners, type FlatPart } from '../solids/flat.ts';
import { circleOutline, type Outline } from '../solids/outline.ts';
import { drawnBoreMm } from '../../disc/index.ts';
import { edgeCorrections, holeIn, type PrintSetting } from '../solids/print.ts';
import type { HolderPlan } from './holderPlan.ts';
import { SCREW_HOLE_MM } from './holderPlan.ts';

/** Material round the hole on the shaft. [mm] */
const HUB_MM = 5;

/** Thickness of the printed template. [mm] */
export const TEMPLATE_MM = 2;

/** Pilot hole in the middle of each channel: a centre punch goes through. [mm] */
const PUNCH_MM = 1.5;

/** A bar from the shaft to the end of the holder, rounded about the shaft. */
function barOutline(plan: HolderPlan, hubMm: number): Outline {
  const [x, y] = [
    Math.max(...plan.outlines[0]!.map((at) => at[0])),
    Math.max(...plan.outlines[0]!.map((at) => at[1])),
  ];
  const radius = Math.max(hubMm, x);
  const round = circleOutline(radius).filter((at) => at[1] < -1e-9);
  return [[radius, y], [-radius, y], [-radius, 0], ...round, [radius, 0]];
}

/**
 * Drill template: put on the shaft, it shows where the screws and the middles of all channels go.
 *
 * As drawn for a printer; the paper copy uses a print setting without corrections.
 *
 * @param head - Disc and its shaft.
 */
export function drillTemplate(plan: HolderPlan, head: HeadPlan, print: PrintSetting): FlatPart {
  const shaft = drawnBoreMm(edgeCorrections(print), head.disc.spec.bore.diameterMm);
  const [outer] = plan.outlines;
  const edge = plan.style === 'ring' ? circle(plan.reachMm) : corners(barOutline(plan, shaft / 2 + HUB_MM));
  if (!outer) return [edge];
  return [
    edge,
    circle(shaft / 2),
    ...plan.screws.map((at) => circle(holeIn(print, SCREW_HOLE_MM) / 2, at)),
    ...plan.channels.map(({ radiusMm, angleDeg }) => {
      const { xMm, yMm } = sheetPoint(angleDeg, radiusMm);
      return circle(holeIn(print, PUNCH_MM) / 2, [xMm, yMm]);
    }),
  ];
}
