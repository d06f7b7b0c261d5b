import type { DiscPlan } from '../disc/index.ts';
import { degToRad, wrapDegrees } from '../units/index.ts';
import { edgeSpread, spreadAcross, type EdgeSpread } from './edgeSpread.ts';
import type { Aperture } from './headSpec.ts';

/** One track as a channel sees it: radial edges in the order of the disc angle, and how softly they pass. */
export interface SeenTrack {
  readonly radiusMm: number;
  readonly spread: EdgeSpread;
  /** Where each edge is drawn. [deg], ascending in [0, 360), n ≥ 0 */
  readonly edgesDeg: readonly number[];
  /** Light gained when an edge passes with the disc angle growing: +1 window begins, -1 it ends, between for a rib. [-] */
  readonly gains: readonly number[];
  /** Sideways move of an edge from where it is drawn, as the process makes it. [mm], clockwise positive */
  readonly movesMm: readonly number[];
  /** Largest of those moves either way; no edge farther off than this and the spread's reach changes anything. [mm] */
  readonly widestMoveMm: number;
  /** Light in the middle of the run that begins at each edge; one value when there is no edge. [-] */
  readonly levels: readonly number[];
}

/**
 * The edges a channel sees on a track: windows as the process makes them, and ribs that cross its spot.
 *
 * @param disc - Where everything on the disc goes.
 * @param track - Index of the track in the code table.
 * @param aperture - What the channel sees at once.
 */
export function seenTrack(disc: DiscPlan, track: number, aperture: Aperture): SeenTrack {
  const { midRadiusMm, windows } = disc.tracks[track]!;
  const growth = disc.spec.process.windowGrowthMm / 2;
  const edges: Edge[] = [];
  let level = 0;
  for (const { fromDeg, toDeg } of windows) {
    level += addArc(edges, { fromDeg, toDeg, gain: 1, growth });
  }
  const across = spreadAcross(aperture);
  for (const rib of disc.ribs) {
    // Share of the spot's length that the rib covers; a rib is material, so growth of windows narrows it.
    const cover =
      across.transmitted(rib.innerRadiusMm - midRadiusMm) -
      across.transmitted(rib.outerRadiusMm - midRadiusMm);
    if (cover > 0)
      level += addArc(edges, { fromDeg: rib.fromDeg, toDeg: rib.toDeg, gain: -cover, growth: -growth });
  }
  edges.sort((a, b) => a.at - b.at);
  const levels = edges.map((edge) => (level += edge.gain));
  return {
    radiusMm: midRadiusMm,
    spread: edgeSpread(aperture),
    edgesDeg: edges.map((edge) => edge.at),
    gains: edges.map((edge) => edge.gain),
    movesMm: edges.map((edge) => edge.move),
    widestMoveMm: Math.abs(growth),
    levels: edges.length > 0 ? levels : [level],
  };
}

interface Edge {
  readonly at: number;
  readonly gain: number;
  readonly move: number;
}

/** Adds both edges of an arc; gives the light it already lends at disc angle 0, before the first edge. */
function addArc(
  edges: Edge[],
  arc: { fromDeg: number; toDeg: number; gain: number; growth: number },
): number {
  const { fromDeg, toDeg, gain, growth } = arc;
  if (toDeg - fromDeg >= 360) return gain;
  const from = wrapDegrees(fromDeg);
  const to = wrapDegrees(toDeg);
  edges.push({ at: from, gain, move: -growth }, { at: to, gain: -gain, move: growth });
  return to < from ? gain : 0;
}

/**
 * Light level a channel has at an angle of the pattern: 0 behind solid land, 1 with the window fully open.
 *
 * A sum over the edges near the spot, each a straight knife edge through the disc's middle.
 *
 * @param seen - The track as the channel sees it.
 * @param angle - Disc angle plus the channel's own angle on the head. [deg]
 * @source derived: light = Σ gain·T(r sin(edge − angle) + move), T the edge spread.
 * @check src/core/head/seenTrack.test.ts (integration of the spot over the pattern)
 */
export function lightLevel(seen: SeenTrack, angle: number): number {
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
