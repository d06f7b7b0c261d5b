import type { FaceMesh } from './faceMesh.ts';

type Corner = readonly [xMm: number, yMm: number, zMm: number];

const HEADER_BYTES = 80;
const FACET_BYTES = 50;

/** Writes facets one after another, little-endian, as the format has it. */
export class FacetWriter {
  readonly bytes: Uint8Array;
  readonly #view: DataView;
  #at = HEADER_BYTES + 4;

  constructor(facets: number, header: string) {
    this.bytes = new Uint8Array(HEADER_BYTES + 4 + facets * FACET_BYTES);
    this.#view = new DataView(this.bytes.buffer);
    for (let i = 0; i < Math.min(header.length, HEADER_BYTES); i++)
      this.bytes[i] = header.charCodeAt(i) & 0x7f;
    this.#view.setUint32(HEADER_BYTES, facets, true);
  }

  facet(normal: Corner, ...corners: readonly [Corner, Corner, Corner]): void {
    for (const place of [normal, ...corners]) {
      for (const value of place) {
        this.#view.setFloat32(this.#at, value, true);
        this.#at += 4;
      }
    }
    this.#at += 2; // attribute bytes, always 0
  }
}

/**
 * A flat part as binary STL: both faces and the walls between them, in millimetres.
 *
 * @param face - Upper face. [mm]
 * @param thicknessMm - Distance of the faces; the lower one lies at z = 0. [mm]
 * @param header - Plain ASCII, up to 80 characters; must not begin with `solid`, which means a text file.
 * @returns The whole file.
 * @source 3D Systems, StereoLithography Interface Specification (1989): 80 bytes, count, 50 bytes a facet.
 * @check test/journeys/discFilesSolid.test.ts (admesh)
 */
export function stlBytes(face: FaceMesh, thicknessMm: number, header: string): Uint8Array {
  const { xMm, yMm, triangles, border } = face;
  const writer = new FacetWriter((2 * triangles.length) / 3 + border.length, header);
  const corner = (vertex: number, z: number): Corner => [xMm[vertex]!, yMm[vertex]!, z];
  for (let at = 0; at < triangles.length; at += 3) {
    const [a, b, c] = [triangles[at]!, triangles[at + 1]!, triangles[at + 2]!];
    writer.facet([0, 0, 1], corner(a, thicknessMm), corner(b, thicknessMm), corner(c, thicknessMm));
    writer.facet([0, 0, -1], corner(a, 0), corner(c, 0), corner(b, 0));
  }
  for (let at = 0; at < border.length; at += 2) {
    const [from, to] = [border[at]!, border[at + 1]!];
    const [dx, dy] = [xMm[to]! - xMm[from]!, yMm[to]! - yMm[from]!];
    const length = Math.hypot(dx, dy);
    // Material lies on the left, so the wall looks to the right.
    const normal: Corner = [dy / length, -dx / length, 0];
    writer.facet(normal, corner(from, 0), corner(to, 0), corner(to, thicknessMm));
    writer.facet(normal, corner(from, 0), corner(to, thicknessMm), corner(from, thicknessMm));
  }
  return writer.bytes;
}
