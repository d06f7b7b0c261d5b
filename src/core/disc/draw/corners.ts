import { wrapDegrees, type Degrees } from '../../units/index.ts';
import type { Outline, Side } from './outlines.ts';
import type { Sheet } from './sheet.ts';

/** An outline by its corners: from each, an arc about the axis or a straight line to the next. */
export interface DrawnOutline {
  readonly corners: readonly { readonly angleDeg: Degrees; readonly radiusMm: number }[];
  /** What leaves each corner; `turnDeg` above 0 clockwise. n = corners */
  readonly sides: readonly (
    { readonly kind: 'line' } | { readonly kind: 'arc'; readonly turnDeg: Degrees }
  )[];
}

type Arc = Extract<Side, { kind: 'arc' }>;
type Line = Extract<Side, { kind: 'line' }>;

/** Radius of an arc moved out of the material it bounds: material lies outside a clockwise arc. [mm] */
function movedRadiusMm({ radiusMm, turnDeg }: Arc, outMm: number): number {
  return turnDeg > 0 ? radiusMm - outMm : radiusMm + outMm;
}

/** Place where a moved line meets a moved arc. */
function meeting({ angleDeg, fromMm, toMm }: Line, aside: Degrees): Degrees {
  // Material lies anticlockwise of a line that runs outward.
  return toMm > fromMm ? angleDeg + aside : angleDeg - aside;
}

/**
 * An outline moved out of its material by the same distance on every side, corners kept sharp.
 *
 * A line along a radius becomes its parallel: at radius r it lies asin(out / r) aside, so it stays one straight line.
 *
 * @param outline - Material on its left; arcs and lines in turn, or one whole circle.
 * @param outMm - Distance; 0 for as it is, below 0 into the material. [mm]
 * @param sheet - Round, or unrolled.
 * @returns Corners in order, the first where an arc begins.
 * @source derived: distance of the place (r, a) from the radius at angle b is r sin(a - b).
 * @check src/core/disc/draw/corners.test.ts (distance of every drawn side from the wanted one)
 */
export function drawnOutline(outline: Outline, outMm: number, sheet: Sheet): DrawnOutline {
  const arcs = outline.filter((side): side is Arc => side.kind === 'arc');
  const lines = outline.filter((side): side is Line => side.kind === 'line');
  if (lines.length === 0) {
    const arc = arcs[0]!;
    const radiusMm = movedRadiusMm(arc, outMm);
    const turnDeg = arc.turnDeg > 0 ? 180 : -180;
    return {
      corners: [0, 180].map((angleDeg) => ({ angleDeg, radiusMm })),
      sides: [
        { kind: 'arc', turnDeg },
        { kind: 'arc', turnDeg },
      ],
    };
  }
  const corners: DrawnOutline['corners'][number][] = [];
  const sides: DrawnOutline['sides'][number][] = [];
  for (const [index, arc] of arcs.entries()) {
    const radiusMm = movedRadiusMm(arc, outMm);
    const before = lines[(index + lines.length - 1) % lines.length]!;
    const after = lines[index]!;
    const aside = sheet.asideDeg(radiusMm, outMm);
    const fromDeg = meeting(before, aside);
    const toDeg = meeting(after, aside);
    const span = wrapDegrees(arc.turnDeg > 0 ? toDeg - fromDeg : fromDeg - toDeg);
    corners.push({ angleDeg: fromDeg, radiusMm }, { angleDeg: toDeg, radiusMm });
    sides.push({ kind: 'arc', turnDeg: arc.turnDeg > 0 ? span : -span }, { kind: 'line' });
  }
  return { corners, sides };
}
