// Reads the solids back. Shares no code with src: its own reading of the binary STL layout.

/** One facet: normal, then three corners, as nine numbers of the file. */
interface Facet {
  readonly normal: readonly number[];
  readonly corners: readonly (readonly number[])[];
}

/** A solid, in the file's own unit. */
export interface ReadStl {
  readonly header: string;
  readonly facets: readonly Facet[];
  /** By the divergence theorem; positive when every facet looks outward. */
  readonly volume: number;
  /** Facets that a vertical line meets: 2 through solid, 0 through a hole. */
  crossingsAt(x: number, y: number): number;
  /** Height of the highest facet there; `null` in a hole. */
  topAt(x: number, y: number): number | null;
}

function facetAt(view: DataView, at: number): Facet {
  const numbers = Array.from({ length: 12 }, (_, i) => view.getFloat32(at + 4 * i, true));
  return {
    normal: numbers.slice(0, 3),
    corners: [numbers.slice(3, 6), numbers.slice(6, 9), numbers.slice(9, 12)],
  };
}

/** Six times the volume between a facet and the origin. */
function tripleProduct({ corners: [a, b, c] }: Facet): number {
  const [ax, ay, az] = a as [number, number, number];
  const [bx, by, bz] = b as [number, number, number];
  const [cx, cy, cz] = c as [number, number, number];
  return ax * (by * cz - bz * cy) + ay * (bz * cx - bx * cz) + az * (bx * cy - by * cx);
}

/** True when a vertical line meets a facet; on a shared side exactly one of the two facets is met. */
function isMet({ corners }: Facet, x: number, y: number): boolean {
  let inside = false;
  for (let i = 0; i < 3; i++) {
    const [x0, y0] = corners[i] as [number, number];
    const [x1, y1] = corners[(i + 1) % 3] as [number, number];
    if (y0 <= y !== y1 <= y && x < x0 + ((y - y0) / (y1 - y0)) * (x1 - x0)) inside = !inside;
  }
  return inside;
}

/** Bands of y, so that a line is tried only against the facets that span its y. */
const BANDS = 400;

/** Reads one binary STL file. Throws when its length does not match its count. */
export function readStl(bytes: Uint8Array): ReadStl {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const count = view.getUint32(80, true);
  if (bytes.length !== 84 + 50 * count) throw new Error(`${bytes.length} bytes do not hold ${count} facets`);
  const facets = Array.from({ length: count }, (_, i) => facetAt(view, 84 + 50 * i));
  const ys = facets.flatMap(({ corners }) => corners.map((corner) => corner[1]!));
  const low = ys.reduce((a, b) => Math.min(a, b), Infinity);
  const high = ys.reduce((a, b) => Math.max(a, b), -Infinity);
  const bandOf = (y: number) =>
    Math.min(BANDS - 1, Math.max(0, Math.floor(((y - low) / (high - low)) * BANDS)));
  const bands: Facet[][] = Array.from({ length: BANDS }, () => []);
  for (const facet of facets) {
    const [a, b, c] = facet.corners.map((corner) => bandOf(corner[1]!)) as [number, number, number];
    for (let band = Math.min(a, b, c); band <= Math.max(a, b, c); band++) bands[band]!.push(facet);
  }
  return {
    header: String.fromCharCode(...bytes.subarray(0, 80)).replace(/\0+$/, ''),
    facets,
    volume: facets.reduce((sum, facet) => sum + tripleProduct(facet), 0) / 6,
    crossingsAt: (x, y) => bands[bandOf(y)]!.filter((facet) => isMet(facet, x, y)).length,
    topAt: (x, y) => {
      const flat = bands[bandOf(y)]!.filter(({ normal }) => normal[2]! > 0.9).filter((facet) =>
        isMet(facet, x, y),
      );
      return flat.length === 0 ? null : Math.max(...flat.map(({ corners }) => corners[0]![2]!));
    },
  };
}
