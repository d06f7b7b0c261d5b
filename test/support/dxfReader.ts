// Reads DXF drawings back. Shares no code with src: its own reading of group codes and of bulges.

/** A closed or open polyline: corners with the bulge of the side that leaves each. */
export interface DxfPolyline {
  readonly layer: string;
  readonly isClosed: boolean;
  readonly corners: readonly { readonly x: number; readonly y: number; readonly bulge: number }[];
}

/** A drawing, in its own unit. */
export interface ReadDxf {
  /** 4 = millimetres. */
  readonly units: number;
  readonly layers: readonly string[];
  readonly polylines: readonly DxfPolyline[];
  /** Area inside outlines of a layer that run opposite ways, by a line integral. */
  areaOf(layer: string): number;
  /** True inside an odd number of closed outlines of a layer. */
  isInside(layer: string, x: number, y: number): boolean;
}

interface Arc {
  readonly cx: number;
  readonly cy: number;
  readonly r: number;
}

type Corner = DxfPolyline['corners'][number];

/** Circle of a bulged side: sagitta over half the chord is the bulge. */
function arcOf(a: Corner, b: Corner): Arc {
  const [dx, dy] = [b.x - a.x, b.y - a.y];
  const chord = Math.hypot(dx, dy);
  const r = (chord * (1 + a.bulge ** 2)) / (4 * a.bulge); // with the bulge's sign
  const rise = r - (a.bulge * chord) / 2; // from the chord to the centre, on its left
  return {
    cx: (a.x + b.x) / 2 - (dy / chord) * rise,
    cy: (a.y + b.y) / 2 + (dx / chord) * rise,
    r: Math.abs(r),
  };
}

/** Times that a line from a place to the right crosses a side. */
function crossings(a: Corner, b: Corner, x: number, y: number): number {
  if (a.bulge === 0) {
    if (a.y <= y === b.y <= y) return 0;
    return x < a.x + ((y - a.y) / (b.y - a.y)) * (b.x - a.x) ? 1 : 0;
  }
  const { cx, cy, r } = arcOf(a, b);
  const half = Math.sqrt(Math.max(0, r * r - (y - cy) ** 2));
  if (half === 0) return 0;
  let count = 0;
  for (const at of [cx - half, cx + half]) {
    if (at <= x) continue;
    // On the arc's side of the chord: right of it where the bulge is above 0.
    const side = (b.x - a.x) * (y - a.y) - (b.y - a.y) * (at - a.x);
    if (side * a.bulge < 0) count++;
  }
  return count;
}

/** Twice the signed area between a side and the origin. */
function twiceArea(a: Corner, b: Corner): number {
  const flat = a.x * b.y - b.x * a.y;
  if (a.bulge === 0) return flat;
  const { r } = arcOf(a, b);
  const turn = 4 * Math.atan(a.bulge);
  return flat + r * r * (turn - Math.sin(turn));
}

function sidesOf({ corners, isClosed }: DxfPolyline): [Corner, Corner][] {
  const last = isClosed ? corners.length : corners.length - 1;
  return corners.slice(0, last).map((corner, i) => [corner, corners[(i + 1) % corners.length]!]);
}

function readPolylines(pairs: readonly (readonly [number, string])[]): DxfPolyline[] {
  const found: DxfPolyline[] = [];
  for (let at = 0; at < pairs.length; at++) {
    if (pairs[at]![0] !== 0 || pairs[at]![1] !== 'LWPOLYLINE') continue;
    let [layer, isClosed] = ['', false];
    const corners: { x: number; y: number; bulge: number }[] = [];
    for (at++; pairs[at]![0] !== 0; at++) {
      const [code, value] = pairs[at]!;
      if (code === 8) layer = value;
      if (code === 70) isClosed = (Number(value) & 1) === 1;
      if (code === 10) corners.push({ x: Number(value), y: NaN, bulge: 0 });
      if (code === 20) corners.at(-1)!.y = Number(value);
      if (code === 42) corners.at(-1)!.bulge = Number(value);
    }
    at--;
    found.push({ layer, isClosed, corners });
  }
  return found;
}

/** Reads one text DXF drawing. Throws where it is none. */
export function readDxf(text: string): ReadDxf {
  const lines = text.split('\n');
  const pairs = Array.from({ length: Math.floor(lines.length / 2) }, (_, i) => {
    const code = Number(lines[2 * i]);
    if (!Number.isInteger(code)) throw new Error(`line ${2 * i + 1} is no group code: ${lines[2 * i]}`);
    return [code, lines[2 * i + 1]!] as const;
  });
  const unitsAt = pairs.findIndex(([code, value]) => code === 9 && value === '$INSUNITS');
  const polylines = readPolylines(pairs);
  const closedOn = (layer: string) => polylines.filter((line) => line.layer === layer && line.isClosed);
  return {
    units: Number(pairs[unitsAt + 1]![1]),
    layers: [...new Set(polylines.map(({ layer }) => layer))],
    polylines,
    areaOf: (layer) =>
      closedOn(layer)
        .flatMap(sidesOf)
        .reduce((sum, [a, b]) => sum + twiceArea(a, b), 0) / 2,
    isInside: (layer, x, y) =>
      closedOn(layer)
        .flatMap(sidesOf)
        .reduce((sum, [a, b]) => sum + crossings(a, b, x, y), 0) %
        2 ===
      1,
  };
}
