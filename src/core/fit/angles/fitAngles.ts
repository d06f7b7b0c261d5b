import type { HeadPlan } from '../../head/index.ts';
import { radToDeg, type Degrees } from '../../units/index.ts';
import type { CodeWalk } from '../wiring/codeWalk.ts';
import type { Crossing } from '../wiring/followed.ts';
import { chainsOf, type Chain } from './chains.ts';
import { varianceOf, type SparseRow } from './cholesky.ts';
import { drawnOffsets } from './drawnEdges.ts';
import { solutionFor, type Evidence, type Fact, type Solution } from './likelihood.ts';
import { likeliestLaw, likeliestNear, type Law } from './likeliestLaw.ts';
import { discEdges, unknownsOf, type DiscEdge, type Unknowns } from './unknowns.ts';

/** An edge where it really is. */
export interface BuiltEdge extends DiscEdge {
  /** Disc angle at which it passes the middle between the levels, both ways round taken together. [deg] */
  readonly atDeg: Degrees;
  /** Standard error of that. [deg] */
  readonly sigmaDeg: Degrees;
  /** How often it was seen to pass. [-] */
  readonly seen: number;
}

/** A figure with its standard error. */
export interface Figure {
  readonly value: number;
  readonly sigma: number;
}

/** Where every edge really is, and what has moved them. */
export interface FittedAngles {
  readonly edges: readonly BuiltEdge[];
  /** Centre of the pattern from the shaft: towards the index mark, and a quarter turn clockwise of it. [mm] */
  readonly boreMm: readonly [Figure, Figure];
  /** Correlation of the two. [-] */
  readonly boreCorrelation: number;
  /** Share of cos 2a and sin 2a. [deg] */
  readonly twiceDeg: readonly [Figure, Figure];
  /** What the vane turns on, after turning back, before the disc follows; `null` when only one way was turned. [deg] */
  readonly playDeg: Figure | null;
  /** Disc angle less the noted mark; `null` without marks. [deg] */
  readonly markOffsetDeg: Figure | null;
  /** Each channel's place along its track, and growth of the windows it sees beyond the drawing's. [mm] */
  readonly alongMm: readonly Figure[];
  readonly growthMm: readonly Figure[];
  readonly law: Law;
  readonly logLikelihood: number;
  readonly chains: readonly Chain[];
  /** Places of single edges were found too; else only what moves many at once. */
  readonly hasEdges: boolean;
}

/** More edges than this are not given places of their own: the sum would take minutes. [-] */
const MOST_EDGES = 600;
/** How far a thing may be off before the recording speaks. [mm], [deg]; own choice where the file says nothing */
const PRIOR = {
  boreMm: 0.5,
  twiceDeg: 0.15,
  playDeg: 3,
  growthOfAllMm: 0.3,
  growthMm: 0.025,
  alongMm: 0.05,
} as const;
/** A channel stands out from this many standard deviations on. [-] */
const OUTSTANDING = 2.5;
/** Sightings an edge from which its scatter is sought again, and the work that this may take. [-], [multiplications] */
const SEEN_AGAIN = 1.4;
const MOST_WORK = 4e6;
/** A surprise beyond this many standard deviations is a jerk of the hand: it is given more freedom there. [sigma] */
const JERK = 3;

/** A mark noted while the disc stood between two crossings. */
export interface MarkFact {
  /** Disc angle by the drawing, counted on, and the edges it hangs on with their shares. */
  readonly drawnDeg: number;
  readonly edges: readonly (readonly [DiscEdge, number])[];
  /** The mark as a disc angle, but for the offset. [deg] */
  readonly markDeg: number;
  /** Which way the disc had turned to get there. */
  readonly turnedWay: 1 | -1;
  readonly sigmaDeg: number;
}

function priors(u: Unknowns, head: HeadPlan, marks: readonly MarkFact[]): Float64Array {
  const sd = new Float64Array(u.size);
  const hasMarks = marks.length > 0;
  // Only the vane's own angle, held at marks both ways, tells what the disc lags behind it.
  const both = new Set(marks.map(({ turnedWay }) => turnedWay)).size > 1;
  sd[u.boreX] = sd[u.boreY] = Math.max(PRIOR.boreMm, 4 * head.disc.spec.process.boreSdMm);
  sd[u.twiceCos] = sd[u.twiceSin] = PRIOR.twiceDeg;
  // What the recording cannot tell is held at nothing, so that it does not take from what it can.
  sd[u.play] = both ? PRIOR.playDeg : 1e-4;
  sd[u.markOffset] = hasMarks ? 1e4 : 1e-4;
  sd[u.growthOfAll] = PRIOR.growthOfAllMm;
  for (let c = 0; c < head.channels.length; c++) {
    sd[u.along + c] = Math.max(PRIOR.alongMm, head.spec.tangentialSdMm);
    sd[u.growth + c] = PRIOR.growthMm;
  }
  return sd;
}

/** A channel that clearly stands out is believed: its prior grows to what is found. */
function relaxed(
  priorSd: Float64Array,
  { values, factor }: Solution,
  u: Unknowns,
  edgesOf: readonly number[],
): Float64Array {
  const sd = priorSd.slice();
  for (let i = u.along; i < u.along + 2 * edgesOf.length; i++) {
    // Both edges of a single window grow apart just as a bore off centre has them do.
    if (i >= u.growth && edgesOf[i - u.growth]! < 4) continue;
    const found = Math.abs(values[i]!);
    const isClear =
      found > OUTSTANDING * sd[i]! && found > OUTSTANDING * Math.sqrt(varianceOf(factor, u.size, [[i, 1]]));
    if (isClear) sd[i] = found;
  }
  return sd;
}

const perMmOf = (edges: EdgeTable, chain: Chain): Float64Array =>
  Float64Array.from(
    chain.crossings,
    ({ boundary, channel }) => radToDeg(1) / edges.of(boundary, channel).radiusMm,
  );

/** Edges by boundary and channel. */
class EdgeTable {
  readonly all: readonly DiscEdge[];
  readonly #places = new Map<number, number>();

  constructor(all: readonly DiscEdge[]) {
    this.all = all;
    for (const [i, { boundary, channel }] of all.entries()) this.#places.set(boundary * 64 + channel, i);
  }

  place(boundary: number, channel: number): number {
    return this.#places.get(boundary * 64 + channel)!;
  }

  readonly of = (boundary: number, channel: number): DiscEdge => this.all[this.place(boundary, channel)]!;
}

/** Jerks of the hand get more freedom; gives factors for every sighting. */
function freedom(evidence: Evidence, law: Law, perMm: readonly Float64Array[]): Float64Array[] {
  const freer = evidence.freer.map((factors) => factors.slice());
  solutionFor(
    evidence,
    law.motion,
    (c, i) => (law.edgeSdMm * perMm[c]![i]!) ** 2,
    (chain) => (index, sigmas) => {
      if (Math.abs(sigmas) > JERK) freer[chain]![index]! *= (sigmas / 2) ** 2;
    },
  );
  return freer;
}

/**
 * Where every edge of the disc really is, without any angle reference but the full turn.
 *
 * The hand is taken to turn smoothly between stops, as smoothly as the recording itself says; the disc to be the drawn
 * one with the bore off centre, sensors off their places, windows grown, play in the coupling, and every edge a little
 * off. All are found together by least squares, so that what the hand did is not taken for a fault of the disc.
 *
 * @param crossings - Edges seen to pass, in order. n ≥ 1
 * @param marks - Angles that the maker has noted.
 * @param known - Law of motion to take as given: quicker, and without places of single edges, to compare wirings by.
 * @returns `null` when the hand never turned smoothly past three edges in a row.
 * @check src/core/fit/angles/fitAngles.test.ts (builds of an independent maker of recorded turns)
 */
export function fitAngles(
  walk: CodeWalk,
  head: HeadPlan,
  crossings: readonly Crossing[],
  marks: readonly MarkFact[] = [],
  known: Law | null = null,
): FittedAngles | null {
  const channels = head.channels.length;
  const together = unknownsOf(channels, 0);
  const drawn = drawnOffsets(walk, head);
  const edges = new EdgeTable(discEdges(walk, head, together, drawn));
  const chains = chainsOf(crossings, edges.of, walk.boundaries.length);
  if (chains.length === 0) return null;
  const edgesOf = head.channels.map((_, c) => edges.all.filter(({ channel }) => channel === c).length);
  const perMm = chains.map((chain) => perMmOf(edges, chain));
  let evidence: Evidence = {
    chains: chains.map(({ sightings }) => sightings),
    freer: chains.map(({ sightings }) => new Float64Array(sightings.length).fill(1)),
    facts: factsOf(marks, together, () => []),
    priorSd: priors(together, head, marks),
  };
  const edgeVariance =
    ({ edgeSdMm }: Law) =>
    (c: number, i: number) =>
      (edgeSdMm * perMm[c]![i]!) ** 2;
  const likeliest = (): Law =>
    likeliestLaw((law) => solutionFor(evidence, law.motion, edgeVariance(law))?.logLikelihood ?? -Infinity);
  let law = known ?? likeliest();
  evidence = { ...evidence, freer: freedom(evidence, law, perMm) };
  law = known ?? likeliest();
  let solution = solutionFor(evidence, law.motion, edgeVariance(law));
  for (let round = 0; round < 2 && solution; round++) {
    evidence = { ...evidence, priorSd: relaxed(evidence.priorSd, solution, together, edgesOf) };
    solution = solutionFor(evidence, law.motion, edgeVariance(law));
  }
  if (!solution) return null;
  const fit = { walk, head, edges, chains, evidence, law, marks, logLikelihood: solution.logLikelihood };
  return known === null && edges.all.length <= MOST_EDGES
    ? withEdges(fit)
    : report(fit, together, solution, false);
}

interface Fitting {
  readonly walk: CodeWalk;
  readonly head: HeadPlan;
  readonly edges: EdgeTable;
  readonly chains: readonly Chain[];
  readonly evidence: Evidence;
  readonly law: Law;
  readonly marks: readonly MarkFact[];
  readonly logLikelihood: number;
}

/** The same once more with a place of its own for every edge. */
function withEdges(fit: Fitting): FittedAngles | null {
  const { edges, chains, evidence, head, marks } = fit;
  const u = unknownsOf(head.channels.length, edges.all.length);
  const own = (edge: DiscEdge): SparseRow => [[u.edges + edges.place(edge.boundary, edge.channel), 1]];
  const widened = chains.map(({ sightings, crossings }) =>
    sightings.map((sighting, i) => {
      const { boundary, channel } = crossings[i]!;
      return { ...sighting, row: [...sighting.row, ...own(edges.of(boundary, channel))] };
    }),
  );
  const facts = factsOf(marks, u, own);
  const solve = ({ motion, edgeSdMm }: Law): Solution | null => {
    const priorSd = new Float64Array(u.size);
    priorSd.set(evidence.priorSd);
    for (const [i, { radiusMm }] of edges.all.entries())
      priorSd[u.edges + i] = (edgeSdMm * radToDeg(1)) / radiusMm;
    return solutionFor({ chains: widened, freer: evidence.freer, facts, priorSd }, motion, () => 0);
  };
  const sightings = widened.reduce((sum, chain) => sum + chain.length, 0);
  // Seen again and again, an edge's own place parts from the hand's doing, and its scatter is known better.
  const isRepeated = sightings > SEEN_AGAIN * edges.all.length && sightings * u.size ** 2 < MOST_WORK;
  const law = isRepeated
    ? likeliestNear(fit.law, (near) => solve(near)?.logLikelihood ?? -Infinity)
    : fit.law;
  const solution = solve(law);
  return solution && report({ ...fit, law }, u, solution, true);
}

function factsOf(marks: readonly MarkFact[], u: Unknowns, own: (edge: DiscEdge) => SparseRow): Fact[] {
  return marks.map(({ drawnDeg, edges, markDeg, turnedWay, sigmaDeg }) => ({
    // Disc angle = drawn + what moves its edges = mark + offset - what the disc lags behind the vane.
    row: [
      [u.markOffset, 1],
      [u.play, -turnedWay / 2],
      ...edges.flatMap(([edge, share]) =>
        [...edge.row, ...own(edge)].map(([at, x]) => [at, -share * x] as const),
      ),
    ],
    value: drawnDeg - markDeg,
    variance: sigmaDeg * sigmaDeg,
  }));
}

function report(fit: Fitting, u: Unknowns, { values, factor }: Solution, hasEdges: boolean): FittedAngles {
  const { edges, chains, law, head, marks, evidence } = fit;
  const sumOf = (places: readonly number[]): Figure => ({
    value: places.reduce((sum, at) => sum + values[at]!, 0),
    sigma: Math.sqrt(
      varianceOf(
        factor,
        u.size,
        places.map((at) => [at, 1] as const),
      ),
    ),
  });
  const figure = (at: number): Figure => sumOf([at]);
  const seen = new Int32Array(edges.all.length);
  for (const { crossings } of chains)
    for (const c of crossings) seen[edges.place(c.boundary, c.channel)]! += 1;
  const built = edges.all.map((edge, i): BuiltEdge => {
    const row: SparseRow = hasEdges ? [...edge.row, [u.edges + i, 1]] : edge.row;
    const own = hasEdges ? 0 : ((law.edgeSdMm * radToDeg(1)) / edge.radiusMm) ** 2;
    const moved = row.reduce((sum, [at, x]) => sum + x * values[at]!, 0);
    const sigmaDeg = Math.sqrt(varianceOf(factor, u.size, row) + own);
    return { ...edge, atDeg: edge.drawnDeg + moved, sigmaDeg, seen: seen[i]! };
  });
  const channels = Array.from({ length: head.channels.length }, (_, c) => c);
  const [x, y] = [figure(u.boreX), figure(u.boreY)];
  const sum = varianceOf(factor, u.size, [
    [u.boreX, 1],
    [u.boreY, 1],
  ]);
  return {
    edges: built,
    boreMm: [x, y],
    boreCorrelation: (sum - x.sigma ** 2 - y.sigma ** 2) / (2 * x.sigma * y.sigma),
    twiceDeg: [figure(u.twiceCos), figure(u.twiceSin)],
    playDeg: evidence.priorSd[u.play]! > 1e-3 ? figure(u.play) : null,
    markOffsetDeg: marks.length > 0 ? figure(u.markOffset) : null,
    alongMm: channels.map((c) => figure(u.along + c)),
    growthMm: channels.map((c) => sumOf([u.growthOfAll, u.growth + c])),
    law,
    logLikelihood: fit.logLikelihood,
    chains,
    hasEdges,
  };
}
