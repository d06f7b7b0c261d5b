import type { Bore } from '../../disc/index.ts';
import { circleOutline } from '../solids/outline.ts';
import { boreIn, holeIn, type PrintSetting } from '../solids/print.ts';
import type { Shape, ShapeKit } from '../solids/shapeKit.ts';
import { BOSS, HUB_HEIGHT_MM, SOCKET_MM, TIP_MM, type CupPlan } from './cupPlan.ts';
import { CUP_ARM } from './materials.ts';

/** Play of a rod in its socket: glued. [mm] */
const GLUE_MM = 0.15;

/** A socket lying along y. */
function socket(
  kit: ShapeKit,
  print: PrintSetting,
  height: number,
  [from, to]: readonly [number, number],
): Shape {
  const wide = holeIn(print, CUP_ARM.diameterMm + GLUE_MM);
  return kit
    .prism([circleOutline(wide / 2)], [from, to])
    .tilted(-90)
    .moved(0, 0, height);
}

/** One cup, standing on its mouth: a cone that needs no support, with a boss for its rod at the rim. */
export function cupShape(kit: ShapeKit, plan: CupPlan, print: PrintSetting): Shape {
  const { outerRadiusMm: outer, depthMm, mouthMm } = plan;
  const cone = (radius: number, tip: number): Shape =>
    kit.turnedProfile(
      [
        [0, 0],
        [radius, 0],
        [tip, radius - tip],
        [0, radius - tip],
      ],
      outer,
    );
  const inner = kit.turnedProfile(
    [
      [0, -1],
      [mouthMm / 2, -1],
      [mouthMm / 2, 0],
      [0, mouthMm / 2],
    ],
    outer,
  );
  const half = BOSS.widthMm / 2;
  const boss = kit.box(
    [-half, half],
    [outer - 5, outer + BOSS.beyondMm],
    [0, Math.min(BOSS.heightMm, depthMm)],
  );
  return cone(outer, TIP_MM)
    .plus(boss)
    .minus(
      inner,
      socket(kit, print, BOSS.heightMm / 2, [
        outer + BOSS.beyondMm - BOSS.socketMm,
        outer + BOSS.beyondMm + 1,
      ]),
    );
}

/** Hub that takes the rods of all cups, a shaft from below and a set screw. */
export function cupHubShape(kit: ShapeKit, plan: CupPlan, bore: Bore, print: PrintSetting): Shape {
  const [height, radius] = [HUB_HEIGHT_MM, plan.hubRadiusMm];
  const sockets = Array.from({ length: plan.cups }, (_, cup) =>
    socket(kit, print, height / 2, [radius - SOCKET_MM, radius + 1]).turned((360 * cup) / plan.cups),
  );
  const screw = kit
    .prism([circleOutline(holeIn(print, 2.6) / 2)], [0, radius + 1])
    .tilted(-90)
    .moved(0, 0, height / 2)
    .turned(180 / plan.cups);
  return kit
    .cylinder(radius, [0, height])
    .minus(kit.prism([boreIn(print, bore)], [-1, height - 2]), ...sockets, screw);
}
