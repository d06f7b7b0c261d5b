import type { Pen, Point } from '../../disc/index.ts';
import { circleOutline, type Outline, type Place } from './outline.ts';

/** A closed line of a flat part: a true circle, or straight sides between corners. [mm] */
export type FlatLine =
  | { readonly kind: 'circle'; readonly radiusMm: number; readonly middle: Place }
  | { readonly kind: 'corners'; readonly corners: Outline };

/** A flat part: where an odd number of lines goes round a place, there is material. n ≥ 1 */
export type FlatPart = readonly FlatLine[];

/** A circle as a line of a flat part. @param radiusMm - Radius. [mm] */
export function circle(radiusMm: number, middle: Place = [0, 0]): FlatLine {
  return { kind: 'circle', radiusMm, middle };
}

/** Straight sides as a line of a flat part. [mm] */
export function corners(outline: Outline): FlatLine {
  return { kind: 'corners', corners: outline };
}

/** The lines of a flat part by their corners, for the solid kernel. [mm] */
export function flatOutlines(part: FlatPart): Outline[] {
  return part.map((line) =>
    line.kind === 'circle' ? circleOutline(line.radiusMm, line.middle) : line.corners,
  );
}

function drawLine(line: FlatLine, pen: Pen): void {
  const point = ([xMm, yMm]: Place): Point => ({ xMm, yMm });
  if (line.kind === 'circle') {
    const [x, y] = line.middle;
    const [right, left] = [point([x + line.radiusMm, y]), point([x - line.radiusMm, y])];
    pen.moveTo(right);
    pen.arcTo(left, point(line.middle), false);
    pen.arcTo(right, point(line.middle), false);
  } else {
    const [first, ...rest] = line.corners;
    pen.moveTo(point(first!));
    for (const corner of rest) pen.lineTo(point(corner));
  }
  pen.close();
}

/** Draws a flat part, circles as true arcs. */
export function drawFlat(part: FlatPart, pen: Pen): void {
  for (const line of part) drawLine(line, pen);
}

/** Area of a flat part whose lines do not cross: outer lines first, each later one a hole. [mm²] */
export function flatAreaMm2([outer, ...holes]: FlatPart): number {
  return lineAreaMm2(outer!) - holes.reduce((sum, hole) => sum + lineAreaMm2(hole), 0);
}

/** Area inside one line. [mm²] @source π r², or the shoelace sum of the corners. */
function lineAreaMm2(line: FlatLine): number {
  if (line.kind === 'circle') return Math.PI * line.radiusMm ** 2;
  const twice = line.corners.reduce((sum, [x, y], index) => {
    const [nextX, nextY] = line.corners[(index + 1) % line.corners.length]!;
    return sum + x * nextY - nextX * y;
  }, 0);
  return Math.abs(twice) / 2;
}
