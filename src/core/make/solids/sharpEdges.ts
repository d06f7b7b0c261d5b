import { cornerOf, dot, facing, type Triple } from './meshFacts.ts';
import type { Mesh } from './solid.ts';

/** A side between two triangles. */
export interface Edge {
  readonly from: Triple;
  readonly to: Triple;
  /** Where the two triangles look. [-] */
  readonly facings: readonly [Triple, Triple];
  /** The surface bends here by more than a circle's sides do. */
  readonly isSharp: boolean;
}

/** Bend above which a line is drawn. [-] @source cosine of 20 degrees, more than between two sides of a small circle. */
const SHARP = Math.cos((20 * Math.PI) / 180);

/** Bend below which two triangles lie in one plane. [-] */
const FLAT = 1 - 1e-6;

/** Every side of a mesh where its surface bends, once. n ≥ 0 */
export function sharpEdges(mesh: Mesh): Edge[] {
  const open = new Map<number, Triple>();
  const edges: Edge[] = [];
  const { triangles } = mesh;
  const count = mesh.positionsMm.length / 3;
  for (let at = 0; at < triangles.length; at += 3) {
    const ids = [triangles[at]!, triangles[at + 1]!, triangles[at + 2]!] as const;
    const own = facing(...(ids.map((id) => cornerOf(mesh, id)) as [Triple, Triple, Triple]));
    for (let side = 0; side < 3; side++) {
      const [from, to] = [ids[side]!, ids[(side + 1) % 3]!];
      const other = open.get(to * count + from);
      if (other === undefined) {
        open.set(from * count + to, own);
        continue;
      }
      const bend = dot(own, other);
      if (bend > FLAT) continue;
      edges.push({
        from: cornerOf(mesh, from),
        to: cornerOf(mesh, to),
        facings: [own, other],
        isSharp: bend < SHARP,
      });
    }
  }
  return edges;
}
