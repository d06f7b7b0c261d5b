import type { Bore } from '../../../disc/index.ts';
import { boreIn, holeIn, type PrintSetting } from '../../solids/print.ts';
import type { Shape, ShapeKit } from '../../solids/shapeKit.ts';
import { SCREW_HOLE_MM, SCREW_PILOT_MM } from '../holderPlan.ts';
import { LID_SCREW_BELOW_MM, LID_SCREWS_DEG, wallHole } from './housingBase.ts';
import { SKIRT_GAP_MM, SKIRT_MM, WALL_MM, type HousingPlan } from './housingPlan.ts';

/** Plate of the lid; how far the outer and the inner skirt reach down the wall. [mm] */
const [PLATE_MM, OUTER_SKIRT_MM, INNER_SKIRT_MM] = [3, 16, 8];

/** How far the drip edge hangs below the inside of the skirt. [mm] */
const DRIP_MM = 1.5;

/** Lip above the upper bearing. [mm] */
const LIP_MM = 1.2;

/** Press fit of a bearing in its seat. [mm] */
const SEAT_PLAY_MM = 0.05;

/**
 * Upper half of the housing, printed on its top: two skirts take the wall between them, so that light would have to
 * turn twice to come in, and the outer one ends in a drip edge.
 *
 * @param plan - Sizes.
 */
export function housingLid(kit: ShapeKit, plan: HousingPlan, print: PrintSetting): Shape {
  const { bearing, seatRadiusMm, innerRadiusMm, outerRadiusMm } = plan;
  const skirtInside = innerRadiusMm + WALL_MM + SKIRT_GAP_MM;
  const skirtEnd = PLATE_MM + OUTER_SKIRT_MM;
  // Lying on its top: heights grow downwards in the finished housing. The skirt's end slopes inwards and up.
  const outerSkirt = kit.turnedProfile(
    [
      [skirtInside, PLATE_MM - 1],
      [outerRadiusMm, PLATE_MM - 1],
      [outerRadiusMm, skirtEnd + DRIP_MM],
      [outerRadiusMm - 0.8, skirtEnd + DRIP_MM],
      [skirtInside, skirtEnd],
    ],
    outerRadiusMm,
  );
  const innerOutside = innerRadiusMm - SKIRT_GAP_MM;
  const innerSkirt = kit
    .cylinder(innerOutside, [PLATE_MM - 1, PLATE_MM + INNER_SKIRT_MM])
    .minus(kit.cylinder(innerOutside - SKIRT_MM, [0, PLATE_MM + INNER_SKIRT_MM + 1]));
  const seatTop = LIP_MM + 0.6 + bearing.widthMm;
  const pocket = holeIn(print, bearing.outerMm + SEAT_PLAY_MM) / 2;
  const passage = (bearing.outerMm + bearing.shaftMm) / 4;
  const screws = LID_SCREWS_DEG.map((angle) =>
    wallHole(kit, holeIn(print, SCREW_HOLE_MM), PLATE_MM + LID_SCREW_BELOW_MM, 360 - angle, [
      skirtInside - 0.5,
      outerRadiusMm + 1,
    ]),
  );
  return kit
    .cylinder(outerRadiusMm, [0, PLATE_MM])
    .plus(outerSkirt, innerSkirt, kit.cylinder(seatRadiusMm, [0, Math.max(PLATE_MM, seatTop)]))
    .minus(
      kit.cylinder(pocket, [LIP_MM + 0.6, seatTop + 5]),
      kit.cylinder(passage, [-1, seatTop + 1]),
      ...screws,
    );
}

/** How the cap covers the upper bearing: skirt over a gap, hub with a set screw. [mm] */
const [CAP_PLATE_MM, CAP_SKIRT_MM, CAP_HUB_MM] = [2, 4, 12];

/**
 * Cap that turns with the shaft and keeps rain and spiders out of the upper bearing; printed on its top.
 *
 * @param plan - Sizes.
 * @param bore - The shaft.
 */
export function rainCap(kit: ShapeKit, { bearing }: HousingPlan, bore: Bore, print: PrintSetting): Shape {
  const radius = bearing.outerMm / 2 + 8;
  const hub = bore.diameterMm / 2 + 5;
  const skirt = kit
    .cylinder(radius, [0, CAP_PLATE_MM + CAP_SKIRT_MM])
    .minus(kit.cylinder(radius - 1.6, [CAP_PLATE_MM, CAP_PLATE_MM + CAP_SKIRT_MM + 1]));
  const screw = wallHole(kit, holeIn(print, SCREW_PILOT_MM), CAP_HUB_MM - 3, 0, [0, hub + 1]);
  return skirt
    .plus(kit.cylinder(hub, [0, CAP_HUB_MM]))
    .minus(kit.prism([boreIn(print, bore)], [-1, CAP_HUB_MM + 1]), screw);
}
