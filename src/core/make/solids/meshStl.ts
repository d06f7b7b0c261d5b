import { FacetWriter } from '../stl/facetWriter.ts';
import { cornerOf, minus, type Triple } from './meshFacts.ts';
import type { Solid } from './solid.ts';

/**
 * Direction a triangle looks, reckoned from sides rounded to 32 bits, as the readers of the format do: of a triangle as thin
 * as a hair they would otherwise find another. [-]
 */
function facing32(a: Triple, b: Triple, c: Triple): Triple {
  const [p, q] = [minus(b, a), minus(c, a)].map((side) => side.map(Math.fround) as unknown as Triple) as [
    Triple,
    Triple,
  ];
  const square = [0, 1, 2].map((axis) => {
    const [i, j] = [(axis + 1) % 3, (axis + 2) % 3] as [0 | 1 | 2, 0 | 1 | 2];
    return Math.fround(Math.fround(p[i] * q[j]) - p[j] * q[i]);
  }) as unknown as Triple;
  const length = Math.hypot(...square);
  return length === 0 ? [0, 0, 0] : [square[0] / length, square[1] / length, square[2] / length];
}

/**
 * A solid as binary STL, in millimetres.
 *
 * @param solid - Its name goes into the header.
 * @returns The whole file; equal solids give equal bytes.
 * @source as `FacetWriter`.
 * @check test/journeys/solidParts.test.ts (admesh)
 */
export function meshStl({ name, mesh }: Solid): Uint8Array {
  const writer = new FacetWriter(mesh.triangles.length / 3, `vanewright ${name}, millimetres`);
  for (let at = 0; at < mesh.triangles.length; at += 3) {
    const [a, b, c] = [0, 1, 2].map((i) => cornerOf(mesh, mesh.triangles[at + i]!)) as [
      Triple,
      Triple,
      Triple,
    ];
    writer.facet(facing32(a, b, c), a, b, c);
  }
  return writer.bytes;
}
