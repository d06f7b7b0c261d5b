import { sheetPoint } from '../../../disc/index.ts';
import { circleOutline, type Place } from '../../solids/outline.ts';
import { holeIn, type PrintSetting } from '../../solids/print.ts';
import type { Shape, ShapeKit, Span } from '../../solids/shapeKit.ts';
import { SCREW_PILOT_MM, type HolderPlan } from '../holderPlan.ts';
import { glands } from '../../../head/index.ts';
import { FLOOR_MM, LEADS_MM, WALL_MM, type HousingPlan } from './housingPlan.ts';

/** Press fit of a bearing in its seat: the seat comes out this much wider. [mm] @source common practice, no source. */
const SEAT_PLAY_MM = 0.05;

/** Post under each screw. [mm] */
const POST_MM = 9;

/** Where the gland goes, away from holders and posts; and the drain. [deg] */
const [GLAND_DEG, DRAIN_DEG] = [120, 240];

/** Hole that lets condensed water out and air in. [mm] */
const DRAIN_MM = 2;

/** Holes for screws into a mast bracket. [mm] */
const BRACKET_HOLE_MM = 4.3;

/** Angles of the screws that hold the lid. [deg] */
export const LID_SCREWS_DEG = [30, 150, 270] as const;

/** How far below the wall's upper edge those screws go in. [mm] */
export const LID_SCREW_BELOW_MM = 7;

function placeAt(angleDeg: number, radiusMm: number): Place {
  const { xMm, yMm } = sheetPoint(angleDeg, radiusMm);
  return [xMm, yMm];
}

/** A hole through a wall, towards the axis. @param wide - As drawn. [mm] */
export function wallHole(
  kit: ShapeKit,
  wide: number,
  heightMm: number,
  angleDeg: number,
  radii: Span,
): Shape {
  const along = kit.prism([circleOutline(wide / 2)], radii);
  // A rod along z, laid down so that it points outwards along y, then turned to its angle.
  return along.tilted(-90).moved(0, 0, heightMm).turned(angleDeg);
}

/** A roof over the drain, open towards the wall, so that no light falls straight in. */
function drainRoof(kit: ShapeKit, radiusMm: number): Shape {
  const block = kit.box([-4, 4], [radiusMm - 5, radiusMm + 3], [0, FLOOR_MM + 4]);
  const hollow = kit.box([-2.5, 2.5], [radiusMm - 3, radiusMm + 4], [FLOOR_MM, FLOOR_MM + 2.5]);
  return block.minus(hollow).turned(DRAIN_DEG);
}

/** The seat of the lower bearing, closed below. */
function seat(
  kit: ShapeKit,
  { bearing, seatRadiusMm }: HousingPlan,
  print: PrintSetting,
): { solid: Shape; hollow: Shape } {
  const pocket = holeIn(print, bearing.outerMm + SEAT_PLAY_MM) / 2;
  const top = FLOOR_MM + 0.6 + bearing.widthMm;
  const relief = (bearing.outerMm + bearing.shaftMm) / 4;
  return {
    solid: kit.cylinder(seatRadiusMm, [0, top]),
    // The relief below keeps the inner ring, which turns, off the floor.
    hollow: kit.cylinder(pocket, [FLOOR_MM + 0.6, top + 1]).plus(kit.cylinder(relief, [FLOOR_MM, top + 1])),
  };
}

/**
 * Lower half of the housing: floor with bearing seat, posts for the head, wall, gland hole and roofed drain.
 *
 * The gland looks down, so that water runs off the cable and not in.
 *
 * @param plan - Sizes.
 * @param holder - Where the head's screws are.
 */
export function housingBase(
  kit: ShapeKit,
  plan: HousingPlan,
  holder: HolderPlan,
  print: PrintSetting,
): Shape {
  const outer = plan.innerRadiusMm + WALL_MM;
  const top = FLOOR_MM + plan.insideMm;
  const { holeMm, seatMm } = glands[plan.gland];
  const glandAt = placeAt(GLAND_DEG, plan.innerRadiusMm - seatMm / 2 - 1);
  const drainRadius = plan.innerRadiusMm - 5;
  const { solid, hollow } = seat(kit, plan, print);
  const posts = holder.screws.map((at) => kit.cylinder(POST_MM / 2, [0, FLOOR_MM + LEADS_MM], at));
  const pilots = holder.screws.map((at) =>
    kit.cylinder(holeIn(print, SCREW_PILOT_MM) / 2, [FLOOR_MM, FLOOR_MM + LEADS_MM + 1], at),
  );
  const bracket = [0, 120, 240].map((angle) =>
    kit.cylinder(
      holeIn(print, BRACKET_HOLE_MM) / 2,
      [-1, FLOOR_MM + 1],
      placeAt(angle, plan.seatRadiusMm + 5),
    ),
  );
  const lidScrews = LID_SCREWS_DEG.map((angle) =>
    wallHole(kit, holeIn(print, SCREW_PILOT_MM), top - LID_SCREW_BELOW_MM, angle, [
      plan.innerRadiusMm - 1,
      outer + 1,
    ]),
  );
  return kit
    .prism([circleOutline(outer)], [0, top])
    .minus(kit.cylinder(plan.innerRadiusMm, [FLOOR_MM, top + 1]))
    .plus(solid, drainRoof(kit, drainRadius), ...posts)
    .minus(
      hollow,
      kit.cylinder(holeIn(print, holeMm) / 2, [-1, FLOOR_MM + 1], glandAt),
      kit.cylinder(holeIn(print, DRAIN_MM) / 2, [-1, FLOOR_MM + 1], placeAt(DRAIN_DEG, drainRadius)),
      ...pilots,
      ...bracket,
      ...lidScrews,
    );
}
