import type { Manifold } from 'manifold-3d';
import { BrokenPromise } from '../../error/index.ts';
import type { Mesh } from './solid.ts';

/** Sides shorter than this are drawn together, so that nothing collapses when rounded to 32 bits. [mm] */
const SHORTEST_SIDE_MM = 0.001;

/** Corners in order of place, those at one place as one, and for each old corner its new number. */
function sortedCorners(positions: Float32Array): { positionsMm: Float32Array; numberOf: Uint32Array } {
  const at = (corner: number, axis: number): number => positions[3 * corner + axis]!;
  const compare = (a: number, b: number): number =>
    at(a, 2) - at(b, 2) || at(a, 1) - at(b, 1) || at(a, 0) - at(b, 0);
  const order = Array.from({ length: positions.length / 3 }, (_, corner) => corner).sort(compare);
  const numberOf = new Uint32Array(order.length);
  const places: number[] = [];
  for (const [index, corner] of order.entries()) {
    // Corners that only 64 bits tell apart are one in the file.
    const isNew = index === 0 || compare(order[index - 1]!, corner) !== 0;
    // + 0 turns -0 into 0, which would be other bytes for the same place
    if (isNew) for (let axis = 0; axis < 3; axis++) places.push(at(corner, axis) + 0);
    numberOf[corner] = places.length / 3 - 1;
  }
  return { positionsMm: Float32Array.from(places), numberOf };
}

/** Triangles each begun at their lowest corner, in order; those that have shrunk to a line are left out. */
function sortedTriangles(triangles: Uint32Array, numberOf: Uint32Array): Uint32Array {
  const rows: [number, number, number][] = [];
  for (let at = 0; at < triangles.length; at += 3) {
    const [a, b, c] = [0, 1, 2].map((i) => numberOf[triangles[at + i]!]!) as [number, number, number];
    if (a === b || b === c || c === a) continue;
    const least = Math.min(a, b, c);
    rows.push(least === a ? [a, b, c] : least === b ? [b, c, a] : [c, a, b]);
  }
  rows.sort((p, q) => p[0] - q[0] || p[1] - q[1] || p[2] - q[2]);
  return Uint32Array.from(rows.flat());
}

/** Throws unless every side of a triangle is the side of exactly one other, the other way round. */
function assertClosed({ positionsMm, triangles }: Mesh): void {
  const count = positionsMm.length / 3;
  const sides = new Set<number>();
  for (let at = 0; at < triangles.length; at++) {
    const next = at % 3 === 2 ? at - 2 : at + 1;
    sides.add(triangles[at]! * count + triangles[next]!);
  }
  const isPaired = [...sides].every((side) => sides.has((side % count) * count + Math.floor(side / count)));
  if (sides.size !== triangles.length || !isPaired)
    throw new BrokenPromise('The surface of a part is not closed.');
}

/**
 * Surface of a body, its corners and triangles in an order that hangs on the surface alone.
 *
 * @param body - A body of the kernel.
 * @param track - Takes what has to be freed.
 * @check src/core/make/solids/solids.test.ts
 */
export function meshOf(body: Manifold, track: <T extends { delete(): void }>(object: T) => T): Mesh {
  const whole = track(track(body.asOriginal()).simplify(SHORTEST_SIDE_MM));
  const { vertProperties, triVerts } = whole.getMesh();
  const { positionsMm, numberOf } = sortedCorners(vertProperties);
  const mesh = { positionsMm, triangles: sortedTriangles(triVerts, numberOf) };
  assertClosed(mesh);
  return mesh;
}
