import { arcPlaces, type Loop } from './loops.ts';

interface Corner {
  readonly at: readonly [number, number];
  readonly bulge: number;
}

/** Places after a corner up to the next, along a line or the arc of its bulge. */
function sidePlaces({ at, bulge }: Corner, { at: to }: Corner): [number, number][] {
  if (bulge === 0) return [[to[0], to[1]]];
  const turn = 4 * Math.atan(bulge);
  const [dx, dy] = [to[0] - at[0], to[1] - at[1]];
  // From the middle of the chord to the centre, as a share of the chord.
  const rise = 1 / (2 * Math.tan(turn / 2));
  const centre: [number, number] = [(at[0] + to[0]) / 2 - rise * dy, (at[1] + to[1]) / 2 + rise * dx];
  const radius = Math.hypot(at[0] - centre[0], at[1] - centre[1]);
  return arcPlaces(centre, radius, Math.atan2(at[1] - centre[1], at[0] - centre[0]), turn);
}

function cornersOf(pairs: readonly (readonly [string, string])[]): Corner[] {
  const corners: { at: [number, number]; bulge: number }[] = [];
  for (const [code, value] of pairs) {
    if (code === '10') corners.push({ at: [Number(value), 0], bulge: 0 });
    if (code === '20') corners.at(-1)!.at[1] = Number(value);
    if (code === '42') corners.at(-1)!.bulge = Number(value);
  }
  return corners;
}

/**
 * Closed polylines of a DXF drawing, by their layers. [mm], y up
 *
 * @source Autodesk, DXF Reference, LWPOLYLINE: groups 10, 20 and 42; flag 1 of group 70 closes it.
 */
export function readDxfLoops(text: string): Map<string, Loop[]> {
  const lines = text.split('\n').map((line) => line.trim());
  const pairs = lines.flatMap((line, i) => (i % 2 === 0 ? [[line, lines[i + 1] ?? ''] as const] : []));
  const starts = pairs.flatMap(([code], i) => (code === '0' ? [i] : []));
  const byLayer = new Map<string, Loop[]>();
  for (const [index, start] of starts.entries()) {
    if (pairs[start]![1] !== 'LWPOLYLINE') continue;
    const own = pairs.slice(start + 1, starts[index + 1]);
    const valueOf = (wanted: string): string => own.find(([code]) => code === wanted)?.[1] ?? '';
    if (Number(valueOf('70')) % 2 === 0) continue;
    const corners = cornersOf(own);
    const loop = corners.flatMap((corner, i) => sidePlaces(corner, corners[(i + 1) % corners.length]!));
    byLayer.set(valueOf('8'), [...(byLayer.get(valueOf('8')) ?? []), loop]);
  }
  return byLayer;
}
