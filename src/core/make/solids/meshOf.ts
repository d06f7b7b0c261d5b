import type { Manifold } from 'manifold-3d';
import type { Mesh } from './solid.ts';

/** Sides shorter than this are drawn together, so that nothing collapses when rounded to 32 bits. [mm] */
const SHORTEST_SIDE_MM = 0.001;

/** Corners in order of place, and for each old corner its new number. */
function sortedCorners(positions: Float32Array): { positionsMm: Float32Array; numberOf: Uint32Array } {
  const corners = positions.length / 3;
  const at = (corner: number, axis: number): number => positions[3 * corner + axis]!;
  const order = Array.from({ length: corners }, (_, corner) => corner).sort(
    (a, b) => at(a, 2) - at(b, 2) || at(a, 1) - at(b, 1) || at(a, 0) - at(b, 0),
  );
  const numberOf = new Uint32Array(corners);
  const positionsMm = new Float32Array(positions.length);
  for (const [number, corner] of order.entries()) {
    numberOf[corner] = number;
    // + 0 turns -0 into 0, which would be other bytes for the same place
    for (let axis = 0; axis < 3; axis++) positionsMm[3 * number + axis] = at(corner, axis) + 0;
  }
  return { positionsMm, numberOf };
}

/** Triangles each begun at their lowest corner, in order. */
function sortedTriangles(triangles: Uint32Array, numberOf: Uint32Array): Uint32Array {
  const rows: [number, number, number][] = [];
  for (let at = 0; at < triangles.length; at += 3) {
    const [a, b, c] = [0, 1, 2].map((i) => numberOf[triangles[at + i]!]!) as [number, number, number];
    const least = Math.min(a, b, c);
    rows.push(least === a ? [a, b, c] : least === b ? [b, c, a] : [c, a, b]);
  }
  rows.sort((p, q) => p[0] - q[0] || p[1] - q[1] || p[2] - q[2]);
  return Uint32Array.from(rows.flat());
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
  return { positionsMm, triangles: sortedTriangles(triVerts, numberOf) };
}
