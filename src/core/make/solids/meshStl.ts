import { FacetWriter } from '../stl/facetWriter.ts';
import { cornerOf, facing, type Triple } from './meshFacts.ts';
import type { Solid } from './solid.ts';

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
    writer.facet(facing(a, b, c), a, b, c);
  }
  return writer.bytes;
}
