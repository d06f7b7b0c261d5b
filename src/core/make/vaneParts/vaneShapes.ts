import { boreCircleMm, type Bore } from '../../disc/index.ts';
import { circleOutline } from '../solids/outline.ts';
import { boreIn, holeIn, type PrintSetting } from '../solids/print.ts';
import type { Shape, ShapeKit } from '../solids/shapeKit.ts';
import { VANE_ARM } from './materials.ts';
import { NOSE_FLOOR_MM, NOSE_SOCKET_MM, NOSE_WALL_MM, SLEEVE_SHARE, SLEEVE_WIDTH_MM } from './vaneMasses.ts';
import type { VanePlan } from './vanePlan.ts';

/** Play of a tube in its socket, both sides together: glued. [mm] @source common practice, no source. */
const GLUE_MM = 0.15;

/** Hub on the shaft: wall round the shaft, height below the tube. [mm] */
const [HUB_WALL_MM, HUB_GRIP_MM] = [5, 14];

/** Hole that an M3 set screw cuts its thread into. [mm] */
const SET_SCREW_MM = 2.6;

/** A hole lying along y at a height, from one place to another. [mm] */
function holeAlongY(
  kit: ShapeKit,
  wide: number,
  height: number,
  [from, to]: readonly [number, number],
): Shape {
  return kit
    .prism([circleOutline(wide / 2)], [from, to])
    .tilted(-90)
    .moved(0, 0, height);
}

/**
 * The fin, lying flat: a thin plate with a square sleeve along its middle for the tube. Front at y = 0.
 *
 * The plate lies beside the tube, not in line with it; its drag, a hundredth of its hold, moves the reading by less than
 * a hundredth of a degree.
 */
export function finShape(kit: ShapeKit, { fin }: VanePlan, print: PrintSetting): Shape {
  const length = SLEEVE_SHARE * fin.depthMm;
  const half = SLEEVE_WIDTH_MM / 2;
  const plate = kit.box([-fin.spanMm / 2, fin.spanMm / 2], [-fin.depthMm, 0], [0, fin.thicknessMm]);
  const sleeve = kit.box([-half, half], [-length, 0], [0, fin.thicknessMm + SLEEVE_WIDTH_MM]);
  const hole = holeIn(print, VANE_ARM.diameterMm + GLUE_MM);
  return plate.plus(sleeve).minus(holeAlongY(kit, hole, fin.thicknessMm + half, [-length - 1, 1]));
}

/** The nose, standing on its closed end: steel goes in from above after the tube from below. [mm] */
export function noseShape(kit: ShapeKit, { weight }: VanePlan, print: PrintSetting): Shape {
  const outer = weight.diameterMm / 2 + NOSE_WALL_MM;
  const steelFrom = NOSE_SOCKET_MM + NOSE_FLOOR_MM;
  const top = steelFrom + weight.lengthMm;
  return kit
    .cylinder(outer, [0, top])
    .minus(
      kit.cylinder(holeIn(print, VANE_ARM.diameterMm + GLUE_MM) / 2, [-1, NOSE_SOCKET_MM]),
      kit.cylinder(holeIn(print, weight.diameterMm + GLUE_MM) / 2, [steelFrom, top + 1]),
    );
}

/** The hub that joins tube and shaft: shaft from below, tube across, a set screw for each. */
export function vaneHubShape(kit: ShapeKit, bore: Bore, print: PrintSetting): Shape {
  const radius = Math.max(boreCircleMm(bore), VANE_ARM.diameterMm) / 2 + HUB_WALL_MM;
  const tubeAt = HUB_GRIP_MM + VANE_ARM.diameterMm / 2 + 2;
  const top = tubeAt + VANE_ARM.diameterMm / 2 + 5;
  const screw = holeIn(print, SET_SCREW_MM);
  return kit
    .cylinder(radius, [0, top])
    .minus(
      kit.prism([boreIn(print, bore)], [-1, HUB_GRIP_MM]),
      holeAlongY(kit, holeIn(print, VANE_ARM.diameterMm + GLUE_MM), tubeAt, [-radius - 1, radius + 1]),
      kit.cylinder(screw / 2, [tubeAt, top + 1]),
      holeAlongY(kit, screw, HUB_GRIP_MM / 2, [0, radius + 1]),
    );
}
