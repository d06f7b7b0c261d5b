import type { Mesh } from '../solids/solid.ts';
import type { FaceMesh } from './faceMesh.ts';

/** Corners of a solid in space, each vertex of the face at every height at which something ends there. */
class Corners {
  readonly #numberOf: Map<number, number>[];
  readonly #places: number[] = [];

  constructor(vertices: number) {
    this.#numberOf = Array.from({ length: vertices }, () => new Map());
  }

  /** Heights at which a vertex has corners already, ascending. */
  heightsOf(vertex: number): number[] {
    return [...this.#numberOf[vertex]!.keys()].sort((a, b) => a - b);
  }

  /** Makes sure that a vertex has a corner at a height. */
  add(vertex: number, height: number, place: readonly [x: number, y: number, z: number]): void {
    const known = this.#numberOf[vertex]!;
    if (known.has(height)) return;
    known.set(height, this.#places.length / 3);
    this.#places.push(...place);
  }

  at(vertex: number, height: number): number {
    return this.#numberOf[vertex]!.get(height)!;
  }

  positions(): Float32Array {
    return Float32Array.from(this.#places);
  }
}

/** How the first layer is drawn narrower, so that it comes out as wide as those above. */
export interface FootFace {
  /** The same mesh with its border farther in. */
  readonly face: FaceMesh;
  /** Height up to which it is narrower; a slope leads there. [mm] */
  readonly layerMm: number;
}

/** Height number of the slope's upper end, between the bottom (0) and the first height (1). */
const FOOT = 0.5;

/** Fills the wall between two upright rails of corners, seen from outside with `from` on the left. */
function fillWall(triangles: number[], from: readonly number[], to: readonly number[]): void {
  let [f, t] = [0, 0];
  while (f < from.length - 1 || t < to.length - 1) {
    if (t === to.length - 1 || (f < from.length - 1 && f <= t && from.length >= to.length)) {
      triangles.push(from[f]!, to[t]!, from[f + 1]!);
      f++;
    } else {
      triangles.push(from[f]!, to[t]!, to[t + 1]!);
      t++;
    }
  }
}

/**
 * A solid from its face: each height as high as asked, one flat bottom, and upright walls between.
 *
 * A wall has a corner wherever another height ends at its edge, so that walls of different heights meet without a gap.
 *
 * @param face - Patterned face.
 * @param zMm - Bottom, then the height of each kind of cell. [mm], n = heights + 1
 * @param foot - First layer of a print; `null` for upright down to the bottom.
 * @returns Watertight mesh; corners in the order of the face's triangles.
 * @check test/journeys/discFilesSolid.test.ts (admesh)
 */
export function solidMesh(face: FaceMesh, zMm: readonly number[], foot: FootFace | null = null): Mesh {
  const corners = new Corners(face.xMm.length);
  const add = (vertex: number, height: number): void => {
    const low = foot && height === 0 ? foot.face : face;
    const z = height === FOOT ? zMm[0]! + foot!.layerMm : zMm[height]!;
    corners.add(vertex, height, [low.xMm[vertex]!, low.yMm[vertex]!, z]);
  };
  for (const [at, vertex] of face.triangles.entries()) {
    add(vertex, 0);
    add(vertex, face.heights[Math.floor(at / 3)]!);
  }
  for (const [at, vertex] of face.border.entries()) {
    const side = at - (at % 2);
    const [low, high] = [face.steps[side]!, face.steps[side + 1]!];
    add(vertex, low);
    add(vertex, high);
    if (foot && low === 0) add(vertex, FOOT);
  }
  const triangles: number[] = [];
  for (let at = 0; at < face.triangles.length; at += 3) {
    const [a, b, c] = [face.triangles[at]!, face.triangles[at + 1]!, face.triangles[at + 2]!];
    const height = face.heights[at / 3]!;
    triangles.push(corners.at(a, height), corners.at(b, height), corners.at(c, height));
    triangles.push(corners.at(a, 0), corners.at(c, 0), corners.at(b, 0));
  }
  for (let at = 0; at < face.border.length; at += 2) {
    const [low, high] = [face.steps[at]!, face.steps[at + 1]!];
    const rail = (vertex: number): number[] =>
      corners
        .heightsOf(vertex)
        .filter((height) => height >= low && height <= high)
        .map((height) => corners.at(vertex, height));
    // Material lies on the left, so the wall is seen from the right, where `from` is on the left.
    fillWall(triangles, rail(face.border[at]!), rail(face.border[at + 1]!));
  }
  return { positionsMm: corners.positions(), triangles: Uint32Array.from(triangles) };
}
