import { sheetPoint } from '../../disc/index.ts';
import type { Degrees } from '../../units/index.ts';

/** A place on the sheet, y up. [mm] */
export type Place = readonly [xMm: number, yMm: number];

/** A closed outline by its corners, against the clock round material and with it round a hole. n ≥ 3 */
export type Outline = readonly Place[];

/** Farthest a straight side may lie from its circle. [mm] @source a tenth of the finest place a hobby printer holds. */
const CHORD_MM = 0.01;

/** Fewest sides of a circle, however small. */
const LEAST_SIDES = 24;

/** Sides of a circle that follow it to 0.01 mm; a multiple of 4, so that it reaches its full width both ways. */
function sidesOf(radiusMm: number): number {
  const half = Math.acos(Math.max(0, 1 - CHORD_MM / radiusMm));
  return 4 * Math.ceil(Math.max(LEAST_SIDES, Math.PI / half) / 4);
}

/**
 * A circle as an outline whose area is exactly the circle's: its corners lie outside by as much as its sides inside.
 *
 * @param radiusMm - Radius. [mm], above 0
 * @param middle - Its middle. [mm]
 * @returns Corners against the clock, the first to the right.
 * @source polygon area n/2 · R² sin(2π/n) set equal to π r².
 * @check src/core/make/solids/solids.test.ts
 */
export function circleOutline(radiusMm: number, middle: Place = [0, 0]): Outline {
  const sides = sidesOf(radiusMm);
  const step = (2 * Math.PI) / sides;
  const corner = radiusMm * Math.sqrt(step / Math.sin(step));
  return Array.from({ length: sides }, (_, side) => [
    middle[0] + corner * Math.cos(side * step),
    middle[1] + corner * Math.sin(side * step),
  ]);
}

/** A rectangle round a middle. [mm] @param size - Width along x and along y. [mm] */
export function rectangleOutline(size: Place, middle: Place = [0, 0]): Outline {
  const [x, y] = [size[0] / 2, size[1] / 2];
  return (
    [
      [x, y],
      [-x, y],
      [-x, -y],
      [x, -y],
    ] as const
  ).map(([dx, dy]) => [middle[0] + dx, middle[1] + dy]);
}

/** An outline turned clockwise about the origin, as disc angles grow. @param angle - Turn. [deg] */
export function turnedOutline(outline: Outline, angle: Degrees): Outline {
  const up = sheetPoint(angle, 1);
  return outline.map(([x, y]) => [x * up.yMm + y * up.xMm, y * up.yMm - x * up.xMm]);
}

/** An outline moved. @param by - Along x and y. [mm] */
export function movedOutline(outline: Outline, [dx, dy]: Place): Outline {
  return outline.map(([x, y]) => [x + dx, y + dy]);
}

/**
 * An outline drawn at the head's reference line, brought to its radius and angle.
 *
 * @param outline - Round the origin: x along the track, y outwards. [mm]
 * @param radiusMm - Distance from the axis. [mm]
 * @param angle - Disc angle. [deg]
 */
export function outlineAt(outline: Outline, radiusMm: number, angle: Degrees): Outline {
  return turnedOutline(movedOutline(outline, [0, radiusMm]), angle);
}
