import type { Sheet } from '../../disc/index.ts';
import type { Circle } from './circles.ts';

/** Which way a side of the border lies, as far as it matters for moving it. */
export type SideKind = 'inner-arc' | 'outer-arc' | 'starting-line' | 'ending-line';

/** Sides of a border and what each of them is. */
interface Sides {
  readonly border: readonly number[];
  readonly kinds: readonly SideKind[];
}

/** How far a vertex moves: along its radius, and across it; -1, 0 or 1 times the distance. */
interface Moves {
  readonly radial: Int8Array;
  readonly aside: Int8Array;
}

/** What is higher lies outside an inner arc, and clockwise of a starting line. */
const moveOf: Readonly<Record<SideKind, readonly [radial: number, aside: number]>> = {
  'inner-arc': [-1, 0],
  'outer-arc': [1, 0],
  'starting-line': [0, -1],
  'ending-line': [0, 1],
};

function movesOf(count: number, { border, kinds }: Sides): Moves {
  const moves: Moves = { radial: new Int8Array(count), aside: new Int8Array(count) };
  for (const [side, kind] of kinds.entries()) {
    const [radial, aside] = moveOf[kind];
    for (const vertex of [border[2 * side]!, border[2 * side + 1]!]) {
      if (radial !== 0) moves.radial[vertex] = radial;
      if (aside !== 0) moves.aside[vertex] = aside;
    }
  }
  return moves;
}

/**
 * Where the vertices of circles lie on the sheet, those of the border moved out of what is higher.
 *
 * A vertex moves as the arc and the line that meet in it do, so that lines stay parallel to where they are wanted.
 *
 * @param circles - Vertices ring by ring.
 * @param sides - The border.
 * @param sheet - Round, or unrolled.
 * @param outMm - Distance. [mm]
 */
export function placesOf(
  circles: readonly Circle[],
  sides: Sides,
  sheet: Sheet,
  outMm: number,
): { readonly xMm: Float32Array; readonly yMm: Float32Array } {
  const count = circles.reduce((sum, { anglesDeg }) => sum + anglesDeg.length, 0);
  const { radial, aside } = movesOf(count, sides);
  const [xMm, yMm] = [new Float32Array(count), new Float32Array(count)];
  let vertex = 0;
  for (const { radiusMm, anglesDeg } of circles) {
    for (const angle of anglesDeg) {
      const radius = radiusMm + radial[vertex]! * outMm;
      const turn = aside[vertex] === 0 ? 0 : aside[vertex]! * sheet.asideDeg(radius, outMm);
      const place = sheet.pointAt(angle + turn, radius);
      xMm[vertex] = place.xMm;
      yMm[vertex] = place.yMm;
      vertex++;
    }
  }
  return { xMm, yMm };
}
