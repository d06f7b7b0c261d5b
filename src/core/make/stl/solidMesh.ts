import type { Mesh } from '../solids/solid.ts';
import type { FaceMesh } from './faceMesh.ts';

/** Kinds of heights: the bottom, the upper end of the foot's slope, then the heights of the face. */
const KINDS = 4;

/** Corners of a solid in space, each vertex of the face at every height at which something ends there. */
class Corners {
  /** Corner of each vertex at each kind of height; -1 for none. */
  readonly #numberOf: Int32Array;
  readonly #places: number[] = [];

  constructor(vertices: number) {
    this.#numberOf = new Int32Array(KINDS * vertices).fill(-1);
  }

  /** True where a vertex has a corner at a height already. */
  has(vertex: number, kind: number): boolean {
    return this.#numberOf[KINDS * vertex + kind] !== -1;
  }

  add(vertex: number, kind: number, x: number, y: number, z: number): void {
    this.#numberOf[KINDS * vertex + kind] = this.#places.length / 3;
    this.#places.push(x, y, z);
  }

  at(vertex: number, kind: number): number {
    return this.#numberOf[KINDS * vertex + kind]!;
  }

  /** Corners of a vertex between two heights, from the lower one up. */
  rail(vertex: number, low: number, high: number): number[] {
    const found: number[] = [];
    for (let kind = low; kind <= high; kind++) if (this.has(vertex, kind)) found.push(this.at(vertex, kind));
    return found;
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

const BOTTOM = 0;
const FOOT = 1;

/** Kind of a height of the face: 0 is the bottom, and the foot comes between. */
const kindOf = (height: number): number => (height === 0 ? BOTTOM : height + 1);

/** Fills the wall between two upright rails of corners, seen from outside with `from` on the left. */
function fillWall(triangles: number[], from: readonly number[], to: readonly number[]): void {
  let f = 0;
  let t = 0;
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
  const zOf = [zMm[0]!, zMm[0]! + (foot?.layerMm ?? 0), ...zMm.slice(1)];
  const add = (vertex: number, kind: number): void => {
    if (corners.has(vertex, kind)) return;
    const { xMm, yMm } = foot && kind === BOTTOM ? foot.face : face;
    corners.add(vertex, kind, xMm[vertex]!, yMm[vertex]!, zOf[kind]!);
  };
  // Plain counting loops: these run over every corner of a disc of a thousand windows.
  for (let at = 0; at < face.triangles.length; at++) {
    const vertex = face.triangles[at]!;
    add(vertex, BOTTOM);
    add(vertex, kindOf(face.heights[(at / 3) | 0]!));
  }
  for (let at = 0; at < face.border.length; at++) {
    const vertex = face.border[at]!;
    const low = kindOf(face.steps[at & ~1]!);
    add(vertex, low);
    add(vertex, kindOf(face.steps[at | 1]!));
    if (foot && low === BOTTOM) add(vertex, FOOT);
  }
  const triangles: number[] = [];
  for (let at = 0; at < face.triangles.length; at += 3) {
    const a = face.triangles[at]!;
    const b = face.triangles[at + 1]!;
    const c = face.triangles[at + 2]!;
    const kind = kindOf(face.heights[at / 3]!);
    triangles.push(corners.at(a, kind), corners.at(b, kind), corners.at(c, kind));
    triangles.push(corners.at(a, BOTTOM), corners.at(c, BOTTOM), corners.at(b, BOTTOM));
  }
  for (let at = 0; at < face.border.length; at += 2) {
    const low = kindOf(face.steps[at]!);
    const high = kindOf(face.steps[at + 1]!);
    // Material lies on the left, so the wall is seen from the right, where `from` is on the left.
    fillWall(
      triangles,
      corners.rail(face.border[at]!, low, high),
      corners.rail(face.border[at + 1]!, low, high),
    );
  }
  return { positionsMm: corners.positions(), triangles: Uint32Array.from(triangles) };
}
