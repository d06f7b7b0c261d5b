type Corner = readonly [xMm: number, yMm: number, zMm: number];

const HEADER_BYTES = 80;
const FACET_BYTES = 50;

/**
 * Writes facets of a binary STL one after another, little-endian.
 *
 * The header is plain ASCII, up to 80 characters; it must not begin with `solid`, which means a text file.
 *
 * @source 3D Systems, StereoLithography Interface Specification (1989): 80 bytes, count, 50 bytes a facet.
 * @check test/journeys/discFilesSolid.test.ts (admesh)
 */
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
