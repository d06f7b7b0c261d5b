import type { DiscPlan } from '../../disc/index.ts';
import { wrapDegrees } from '../../units/index.ts';
import { edgeSpread, penumbraMm, spreadAcross, type EdgeSpread } from './edgeSpread.ts';
import type { Aperture, HeadSpec, Penumbra } from '../headSpec.ts';
import { neighboursOf, type Neighbour } from './neighbours.ts';
import { ringSpread } from './ringSpread.ts';
import { openArcs, seenRibs, type OpenArc } from './seenRibs.ts';

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
  /** Light that spills in from neighbour tracks. n ≥ 0 */
  readonly spill: readonly Spill[];
}

/** A neighbour track as a channel sees it, and how much of its light it gets. */
export interface Spill {
  readonly seen: SeenTrack;
  /** Light of an open window as a share of full light; a pattern off its shaft wanders under the spot. [-] at [deg] */
  share(angleDeg: number): number;
}

/**
 * The edges a channel sees on a track: windows as the process makes them, less the ribs that cross its spot.
 *
 * @param disc - Where everything on the disc goes.
 * @param track - Index of the track in the code table. [-]
 * @param aperture - What the channel sees at once. [mm]
 * @param penumbra - Size and distances of the light; parallel light where left out. [mm]
 */
export function seenTrack(
  disc: DiscPlan,
  track: number,
  aperture: Aperture,
  penumbra: Penumbra | null = null,
): SeenTrack {
  return {
    radiusMm: disc.tracks[track]!.midRadiusMm,
    spread: ownSpread(disc.tracks[track]!, aperture, penumbra),
    ...windowEdges(disc, track, disc.tracks[track]!.windows, aperture),
    spill: [],
  };
}

/** Edges of windows of one track, as the process makes them, less the ribs of the disc that cross a spot. */
export function windowEdges(
  disc: DiscPlan,
  track: number,
  windows: DiscPlan['tracks'][number]['windows'],
  aperture: Aperture,
): Pick<SeenTrack, 'edgesDeg' | 'gains' | 'movesMm' | 'widestMoveMm' | 'levels'> {
  const growth = disc.spec.process.windowGrowthMm / 2;
  const ribs = seenRibs(disc, track, aperture);
  const edges: Edge[] = [];
  let level = 0;
  for (const window of windows) {
    for (const arc of openArcs(window, ribs)) {
      // A window widens at its ends; where a rib ends inside it, it widens too, since a rib is material.
      level += addArc(edges, { ...arc, growth });
    }
  }
  const steps = joined(edges);
  const levels = steps.map((edge) => (level += edge.gain));
  return {
    edgesDeg: steps.map((edge) => edge.at),
    gains: steps.map((edge) => edge.gain),
    movesMm: steps.map((edge) => edge.move),
    widestMoveMm: Math.abs(growth),
    levels: steps.length > 0 ? levels : [level],
  };
}

/** Part of a spot beside its ring above which its shape within the ring counts. [-] */
const CLIPPED = 1e-4;

/** How an edge passes what a spot sees of its own ring. */
function ownSpread(
  { innerRadiusMm, outerRadiusMm, midRadiusMm }: DiscPlan['tracks'][number],
  aperture: Aperture,
  penumbra: Penumbra | null,
): EdgeSpread {
  const setting = { radiusMm: midRadiusMm, penumbra };
  const ringMm = outerRadiusMm - innerRadiusMm;
  const whole = edgeSpread(aperture, setting);
  if (aperture.shape === 'gaussian' || spreadAcross(aperture).transmitted(ringMm / 2) < CLIPPED) return whole;
  const ring = { innerRadiusMm, outerRadiusMm, spotRadiusMm: midRadiusMm, radiusMm: midRadiusMm };
  return ringSpread(aperture, { ...ring, softMm: penumbraMm(penumbra) })?.spread ?? whole;
}

/** A neighbour with its own edges. */
export type SeenNeighbour = Neighbour & { readonly seen: SeenTrack };

/**
 * Neighbours in reach of a channel, each with its edges at the radius and in the spot that see them.
 *
 * @param track - The track that the channel looks at. [index into the disc's tracks]
 */
export function seenNeighbours(
  disc: DiscPlan,
  track: number,
  spot: Parameters<typeof neighboursOf>[2],
): SeenNeighbour[] {
  const whole = new Map<number, SeenTrack>();
  return neighboursOf(disc, track, spot).map((neighbour) => {
    const { radiusMm, spread } = neighbour;
    const seen = whole.get(neighbour.track) ?? seenTrack(disc, neighbour.track, spot.aperture);
    whole.set(neighbour.track, seen);
    return { ...neighbour, seen: { ...seen, radiusMm, spread } };
  });
}

interface Edge {
  readonly at: number;
  readonly gain: number;
  readonly move: number;
}

/** Adds both edges of an arc; gives the light it already lends at disc angle 0, before the first edge. */
function addArc(edges: Edge[], arc: OpenArc & { growth: number }): number {
  const { fromDeg, toDeg, share, growth } = arc;
  if (toDeg - fromDeg >= 360) return share;
  const from = wrapDegrees(fromDeg);
  const to = wrapDegrees(toDeg);
  edges.push({ at: from, gain: share, move: -growth }, { at: to, gain: -share, move: growth });
  return to < from ? share : 0;
}

/** Edges this near to each other are one: an arc ends where the next begins. [deg] */
const SAME_EDGE_DEG = 1e-9;

/** Edges in order, those at one place joined; the one that gains more tells which way it moves. */
function joined(edges: Edge[]): Edge[] {
  const steps: Edge[] = [];
  for (const edge of edges.sort((a, b) => a.at - b.at)) {
    const last = steps.at(-1);
    if (!last || edge.at - last.at > SAME_EDGE_DEG) {
      steps.push(edge);
      continue;
    }
    const stronger = Math.abs(edge.gain) > Math.abs(last.gain) ? edge : last;
    steps[steps.length - 1] = { at: last.at, gain: last.gain + edge.gain, move: stronger.move };
  }
  return steps.filter((edge) => Math.abs(edge.gain) > 0);
}

/**
 * A track as a channel of a head sees it, its neighbours' light included, nothing being off its place.
 *
 * @param disc - Where everything on the disc goes.
 * @param track - Index of the track in the code table. [-]
 * @param spec - Aperture and light of the head. [mm]
 * @check test/published/spill (the spot added up over the whole disc)
 */
export function seenAsDrawn(
  disc: DiscPlan,
  track: number,
  { aperture, penumbra = null }: Pick<HeadSpec, 'aperture' | 'penumbra'>,
): SeenTrack {
  const neighbours = seenNeighbours(disc, track, { aperture, penumbra, radialSdMm: 0 });
  return {
    ...seenTrack(disc, track, aperture, penumbra),
    spill: neighbours.map(({ seen, share }) => ({ seen, share: () => share(0) })),
  };
}
