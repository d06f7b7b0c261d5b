import type { HeadPlan } from '../../head/index.ts';
import { degToRad, radToDeg, turnBetween } from '../../units/index.ts';
import type { Stretch } from '../reading/recording.ts';
import type { CodeWalk } from '../wiring/codeWalk.ts';
import type { Followed } from '../wiring/followed.ts';
import { drawnAt } from './chains.ts';
import { drawnOffsets } from './drawnEdges.ts';
import type { MarkFact } from './fitAngles.ts';
import { discEdges, unknownsOf, type DiscEdge } from './unknowns.ts';

/** How well a maker holds a vane at a mark. [deg]; common practice, no source */
const MARK_SIGMA_DEG = 1;

/** Marks as facts about the disc. */
export interface MarkFacts {
  readonly facts: readonly MarkFact[];
  /** +1 when the disc angle grows with the marks, -1 when it falls; `null` with fewer than three marks. */
  readonly way: 1 | -1 | null;
}

/**
 * Marks that the maker noted, each tied to the edges passed before and after it.
 *
 * The vane stands somewhere between those two edges: that much is known of it, and no more, since it may have stopped.
 */
export function markFacts(
  walk: CodeWalk,
  head: HeadPlan,
  path: Followed,
  stretches: readonly Stretch[],
): MarkFacts {
  const held = heldMarks(walk, head, path, stretches);
  if (held.length < 3) return { facts: [], way: null };
  const spread = (way: number): number =>
    1 - Math.hypot(...vectorMean(held.map(({ at, mark }) => at - way * mark)));
  const way = spread(1) <= spread(-1) ? 1 : -1;
  const [cos, sin] = vectorMean(held.map(({ at, mark }) => at - way * mark));
  const offset = radToDeg(Math.atan2(sin, cos));
  const facts = held.map(({ at, mark, edges, gap, turnedWay }) => ({
    // The same angle less whole turns, near the mark but for the offset.
    drawnDeg: way * mark + offset + turnBetween(offset, at - way * mark),
    edges,
    markDeg: way * mark,
    turnedWay,
    sigmaDeg: Math.hypot(gap / Math.sqrt(12), MARK_SIGMA_DEG),
  }));
  return { facts, way };
}

function vectorMean(angles: readonly number[]): [number, number] {
  const sum = (part: (rad: number) => number): number =>
    angles.reduce((total, angle) => total + part(degToRad(angle)), 0) / angles.length;
  return [sum(Math.cos), sum(Math.sin)];
}

/** Each noted mark with where the drawing has the disc then. */
function heldMarks(walk: CodeWalk, head: HeadPlan, { crossings }: Followed, stretches: readonly Stretch[]) {
  const all = discEdges(walk, head, unknownsOf(head.channels.length, 0), drawnOffsets(walk, head));
  const byPlace = new Map(all.map((edge) => [edge.boundary * 64 + edge.channel, edge]));
  const edgeOf = (boundary: number, channel: number): DiscEdge => byPlace.get(boundary * 64 + channel)!;
  return stretches.flatMap((stretch, index) => {
    const own = crossings.filter((crossing) => crossing.stretch === index);
    return runsOfMarks(stretch).flatMap(({ markDeg, timeMs }) => {
      const after = own.findIndex((crossing) => crossing.timeMs > timeMs);
      const [before, next] = [own[after - 1], own[after]];
      if (!before || !next) return [];
      const [a, b] = [before, next].map((crossing) => drawnAt(crossing, edgeOf, walk.boundaries.length));
      const edges = [before, next].map((c) => [edgeOf(c.boundary, c.channel), 0.5] as const);
      return [{ at: (a! + b!) / 2, gap: Math.abs(b! - a!), mark: markDeg, edges, turnedWay: before.way }];
    });
  });
}

/** Each run of rows with one mark, at its middle. */
function runsOfMarks({ marksDeg, timesMs }: Stretch): { markDeg: number; timeMs: number }[] {
  const runs: { markDeg: number; timeMs: number }[] = [];
  for (let from = 0; from < marksDeg.length;) {
    let to = from + 1;
    while (to < marksDeg.length && marksDeg[to] === marksDeg[from]) to++;
    const markDeg = marksDeg[from];
    if (markDeg !== null && markDeg !== undefined)
      runs.push({ markDeg, timeMs: (timesMs[from]! + timesMs[to - 1]!) / 2 });
    from = to;
  }
  return runs;
}
