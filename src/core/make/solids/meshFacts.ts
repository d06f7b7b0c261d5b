import type { Mesh } from './solid.ts';

/** A place or a direction in space. [mm] or [-] */
export type Triple = readonly [x: number, y: number, z: number];

/** Lowest and highest place of a body along each axis. [mm] */
export interface MeshBox {
  readonly low: Triple;
  readonly high: Triple;
}

/** Corner of a mesh. [mm] */
export function cornerOf({ positionsMm }: Mesh, corner: number): Triple {
  return [positionsMm[3 * corner]!, positionsMm[3 * corner + 1]!, positionsMm[3 * corner + 2]!];
}

/** Difference of two places. [mm] */
export function minus(a: Triple, b: Triple): Triple {
  return [a[0] - b[0], a[1] - b[1], a[2] - b[2]];
}

/** Direction square to two others, as long as the area they span. [mm²] */
export function cross(a: Triple, b: Triple): Triple {
  return [a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]];
}

/** Product of two directions along each other. [mm²] */
export function dot(a: Triple, b: Triple): number {
  return a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
}

/** Direction a triangle looks, of length 1; all 0 where it has no area. [-] */
export function facing(a: Triple, b: Triple, c: Triple): Triple {
  const square = cross(minus(b, a), minus(c, a));
  const length = Math.hypot(...square);
  return length === 0 ? [0, 0, 0] : [square[0] / length, square[1] / length, square[2] / length];
}

/**
 * Volume inside a closed mesh. [mm³]
 *
 * @source divergence theorem: a sixth of the triple product of each triangle's corners.
 * @check src/core/make/solids/solids.test.ts (closed forms)
 */
export function meshVolumeMm3(mesh: Mesh): number {
  let sixfold = 0;
  for (let at = 0; at < mesh.triangles.length; at += 3) {
    const [a, b, c] = [0, 1, 2].map((i) => cornerOf(mesh, mesh.triangles[at + i]!)) as [
      Triple,
      Triple,
      Triple,
    ];
    sixfold += dot(a, cross(b, c));
  }
  return sixfold / 6;
}

/** Box round a mesh. [mm] */
export function meshBox({ positionsMm }: Mesh): MeshBox {
  const low = [Infinity, Infinity, Infinity];
  const high = [-Infinity, -Infinity, -Infinity];
  for (const [i, value] of positionsMm.entries()) {
    low[i % 3] = Math.min(low[i % 3]!, value);
    high[i % 3] = Math.max(high[i % 3]!, value);
  }
  return { low: low as unknown as Triple, high: high as unknown as Triple };
}

/** Width, depth and height of a mesh. [mm] */
export function meshSizeMm(mesh: Mesh): Triple {
  const { low, high } = meshBox(mesh);
  return minus(high, low);
}
