import { meshBox, type Triple } from '../solids/meshFacts.ts';
import type { Solid } from '../solids/solid.ts';

/** Clear bed between two parts. [mm] @source common practice, no source: room for a skirt and a blade. */
const GAP_MM = 5;

/** Box round all bodies of a part. [mm] */
function partBox(bodies: readonly Solid[]): { low: Triple; high: Triple } {
  const boxes = bodies.map(({ mesh }) => meshBox(mesh));
  const over = (pick: (...values: number[]) => number, end: 'low' | 'high'): Triple =>
    [0, 1, 2].map((axis) => pick(...boxes.map((box) => box[end][axis]!))) as unknown as Triple;
  return { low: over(Math.min, 'low'), high: over(Math.max, 'high') };
}

/**
 * Where each part goes on the bed: in rows from the front left corner, all at 0 or above, none over another.
 *
 * @param parts - Bodies of each part; bodies of one part stay in place to each other.
 * @param bedMm - Width of the bed; a row never grows wider unless one part does. [mm]
 * @returns How far each part is moved. [mm], n = parts
 */
export function layOut(parts: readonly (readonly Solid[])[], bedMm: number): Triple[] {
  let [x, y, rowDepth] = [0, 0, 0];
  return parts.map((bodies) => {
    const { low, high } = partBox(bodies);
    const [width, depth] = [high[0] - low[0], high[1] - low[1]];
    if (x > 0 && x + width > bedMm) [x, y, rowDepth] = [0, y + rowDepth + GAP_MM, 0];
    const move: Triple = [x - low[0], y - low[1], -low[2]];
    x += width + GAP_MM;
    rowDepth = Math.max(rowDepth, depth);
    return move;
  });
}
