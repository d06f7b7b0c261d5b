import type { Outline, Place } from '../solids/outline.ts';

/** Distance of a place from a straight side. [mm] */
function fromSide([x, y]: Place, [ax, ay]: Place, [bx, by]: Place): number {
  const [dx, dy] = [bx - ax, by - ay];
  const along = Math.min(1, Math.max(0, ((x - ax) * dx + (y - ay) * dy) / (dx * dx + dy * dy)));
  return Math.hypot(x - ax - along * dx, y - ay - along * dy);
}

/** True where a place lies inside an outline. */
function isInside([x, y]: Place, outline: Outline): boolean {
  let inside = false;
  for (const [index, [ax, ay]] of outline.entries()) {
    const [bx, by] = outline[(index + 1) % outline.length]!;
    if (ay <= y !== by <= y && x < ax + ((y - ay) / (by - ay)) * (bx - ax)) inside = !inside;
  }
  return inside;
}

function cornersToSides(from: Outline, to: Outline): number {
  let least = Infinity;
  for (const corner of from) {
    if (isInside(corner, to)) return 0;
    for (const [index, side] of to.entries()) {
      least = Math.min(least, fromSide(corner, side, to[(index + 1) % to.length]!));
    }
  }
  return least;
}

/**
 * Width of material between two openings, 0 where they overlap. [mm]
 *
 * @param a - One opening, without dents. [mm]
 * @param b - The other, with at least one corner inside the first where they overlap.
 * @source the least distance of two straight-sided figures is taken at a corner of one of them.
 * @check src/core/make/headParts/crowding.test.ts (circles and boxes in closed form)
 */
export function outlineGapMm(a: Outline, b: Outline): number {
  return Math.min(cornersToSides(a, b), cornersToSides(b, a));
}
