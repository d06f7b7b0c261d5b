import type { Triangles } from '../readSolid.ts';

/** What a printer would find in a body. */
export interface SolidFacts {
  readonly triangles: number;
  /** True where every side of a triangle is shared with just one other, which runs along it the other way. */
  readonly isClosed: boolean;
  /** Above 0 where outside is where triangles turn against the clock. [mm³] */
  readonly volumeMm3: number;
  /** Height of its lowest corner. [mm] */
  readonly lowMm: number;
}

/** Sides that run one way and not the other, by counting both. */
function isClosed(triangles: Triangles): boolean {
  const corners = new Map<string, number>();
  const numberOf = (triangle: readonly number[], corner: number): number => {
    const key = triangle.slice(3 * corner, 3 * corner + 3).join(' ');
    const known = corners.get(key) ?? corners.size;
    corners.set(key, known);
    return known;
  };
  // Corners are fewer than 2^26, so that two of them fit one number.
  const sides = new Map<number, number>();
  const count = (from: number, to: number, by: number): void => {
    const key = from * 2 ** 26 + to;
    sides.set(key, (sides.get(key) ?? 0) + by);
  };
  for (const triangle of triangles) {
    const [a, b, c] = [0, 1, 2].map((corner) => numberOf(triangle, corner)) as [number, number, number];
    for (const [from, to] of [
      [a, b],
      [b, c],
      [c, a],
    ] as const) {
      if (from < to) count(from, to, 1);
      else count(to, from, -1);
    }
  }
  return [...sides.values()].every((left) => left === 0);
}

/**
 * Facts of a body as it was read back.
 *
 * @source volume: a sixth of the triple product of each triangle's corners (divergence theorem).
 * @check src/core/make/readBack/readBundle.test.ts
 */
export function solidFacts(triangles: Triangles): SolidFacts {
  let [sixfold, lowMm] = [0, Infinity];
  for (const [ax, ay, az, bx, by, bz, cx, cy, cz] of triangles as readonly (readonly [
    number,
    number,
    number,
    number,
    number,
    number,
    number,
    number,
    number,
  ])[]) {
    sixfold += ax * (by * cz - bz * cy) - ay * (bx * cz - bz * cx) + az * (bx * cy - by * cx);
    lowMm = Math.min(lowMm, az, bz, cz);
  }
  return { triangles: triangles.length, isClosed: isClosed(triangles), volumeMm3: sixfold / 6, lowMm };
}
