import { degToRad, wrapDegrees } from '../../units/index.ts';
import type { SeenTrack } from './seenTrack.ts';

/**
 * Light level a channel has at an angle of the pattern: 0 behind solid land, 1 with the window fully open.
 *
 * A sum over the edges near the spot, each a straight knife edge through the disc's middle, and over those of neighbour
 * tracks in its reach; their light adds to it, so that it may pass 1.
 *
 * @param seen - The track as the channel sees it.
 * @param angle - Disc angle plus the channel's own angle on the head. [deg]
 * @source derived: light = Σ gain·T(r sin(edge − angle) + move), T the edge spread.
 * @check src/core/head/light/seenTrack.test.ts (integration of the spot over the pattern)
 */
export function lightLevel(seen: SeenTrack, angle: number): number {
  let light = ownLight(seen, angle);
  for (const { seen: neighbour, share } of seen.spill) light += share(angle) * ownLight(neighbour, angle);
  return light;
}

function ownLight(seen: SeenTrack, angle: number): number {
  const { edgesDeg, gains, movesMm, levels, radiusMm, spread } = seen;
  const at = wrapDegrees(angle);
  const edges = edgesDeg.length;
  if (edges === 0) return levels[0]!;
  const before = edgesAtOrBefore(edgesDeg, at);
  let light = levels[before === 0 ? edges - 1 : before - 1]!;
  // Outwards from the angle, each way until an edge is out of reach or a quarter of a turn off.
  const farMm = spread.reachMm + seen.widestMoveMm;
  for (const way of [1, -1]) {
    for (let step = 0; step < edges; step++) {
      const i = (before + edges + (way > 0 ? step : -1 - step)) % edges;
      const turn = way * wrapDegrees(way * (edgesDeg[i]! - at));
      const ahead = radiusMm * Math.sin(degToRad(turn));
      if (Math.abs(turn) >= 90 || Math.abs(ahead) > farMm) break;
      const passed = spread.transmitted(ahead + movesMm[i]!);
      light += gains[i]! * (way > 0 ? passed : passed - 1);
    }
  }
  return light;
}

/** How many edges lie at an angle or before it. [-] */
function edgesAtOrBefore(edgesDeg: readonly number[], at: number): number {
  let low = 0;
  let high = edgesDeg.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (edgesDeg[middle]! <= at) low = middle + 1;
    else high = middle;
  }
  return low;
}
