import { turnBetween } from '../../units/index.ts';
import { medianOf, sturdySigma } from '../levels/spread.ts';
import type { ColumnLevels } from '../levels/channelLevels.ts';
import type { BuiltEdge, FittedAngles } from '../angles/fitAngles.ts';
import type { Stretch } from '../reading/recording.ts';
import type { Wiring } from '../wiring/findWirings.ts';
import { angleAfter, pointBefore, type PathPiece } from './shaftPath.ts';

/** A channel's counts across its edges. */
export interface EdgeCurve {
  readonly channel: number;
  /** Place across the edge, 0 dark and 1 lit, at equally spaced counts from dark to lit. [-], never falling */
  readonly places: readonly number[];
  /** Turn from dark to lit. [deg] */
  readonly widthDeg: number;
  /** How far single samples stand off the curve, as a turn. [deg] */
  readonly scatterDeg: number;
  /** Samples it was made of. [-] */
  readonly samples: number;
}

/** What interpolation inside the step would bring. */
export interface Interpolation {
  /** A curve a channel, or `null` where too little is known of its edges. n = channels */
  readonly curves: readonly (EdgeCurve | null)[];
  /** Root mean square error with and without it. [deg] */
  readonly rmsWithDeg: number;
  readonly rmsWithoutDeg: number;
  /** How much smaller the error becomes, and the standard error of that. [-] */
  readonly gain: number;
  readonly gainSigma: number;
  /** Worth writing into the program. */
  readonly isOffered: boolean;
}

/** Points of a curve: enough for any aperture, few enough for a small controller. */
const POINTS = 9;
/** Fewer samples on the slopes of a channel make no curve. [-] */
const LEAST_SAMPLES = 24;
/** Interpolation is offered when it makes the error smaller by so much, for certain. [-]; own choice */
const WORTH = 0.1;

/** One sample on a slope: how far past the edge towards the lit side, and which share of the swing it reads. */
interface SlopeSample {
  readonly turnDeg: number;
  readonly share: number;
}

/** Samples near the edges of each channel. */
function slopeSamples(
  angles: FittedAngles,
  wiring: Wiring,
  levels: readonly ColumnLevels[],
  stretches: readonly Stretch[],
  path: readonly PathPiece[],
  nearDeg: readonly number[],
  windowLevel: 0 | 1,
): SlopeSample[][] {
  const found: SlopeSample[][] = wiring.channels.map(() => []);
  const play = angles.playDeg?.value ?? 0;
  const edgesOf = wiring.channels.map((_, c) => sortedEdges(angles.edges, c));
  for (const piece of path) {
    const stretch = stretches[piece.stretch]!;
    for (const [i, row] of stretch.rows.entries()) {
      const point = pointBefore(piece, stretch.timesMs[i]!);
      if (point < 0 || !piece.isSmooth[point + 1]) continue;
      const way = Math.sign(piece.anglesDeg[point + 1]! - piece.anglesDeg[point]!);
      const disc = angleAfter(piece, point, stretch.timesMs[i]!) - (way * play) / 2;
      for (const [c, wire] of wiring.channels.entries()) {
        if (!wire) continue;
        const edge = nearestEdge(edgesOf[c]!, disc);
        const past = edge ? turnBetween(edge.atDeg, disc) : 180;
        if (!edge || Math.abs(past) > nearDeg[c]!) continue;
        const { lowPlateau, highPlateau, column } = levels[wire.column]!;
        const high = (row[column]! - lowPlateau) / (highPlateau - lowPlateau);
        const isLitHigh = wire.inverted === (windowLevel === 0);
        found[c]!.push({ turnDeg: edge.begins ? past : -past, share: isLitHigh ? high : 1 - high });
      }
    }
  }
  return found;
}

function sortedEdges(edges: readonly BuiltEdge[], channel: number): BuiltEdge[] {
  return edges.filter((edge) => edge.channel === channel).sort((a, b) => a.atDeg - b.atDeg);
}

function nearestEdge(edges: readonly BuiltEdge[], disc: number): BuiltEdge | undefined {
  let best: BuiltEdge | undefined;
  for (const edge of edges) {
    if (!best || Math.abs(turnBetween(edge.atDeg, disc)) < Math.abs(turnBetween(best.atDeg, disc)))
      best = edge;
  }
  return best;
}

/** The curve of one channel: the median place at each share of the swing, made to rise. */
function curveOf(channel: number, samples: readonly SlopeSample[], noiseShare: number): EdgeCurve | null {
  const end = Math.max(0.03, 4 * noiseShare);
  const slope = samples.filter(({ share }) => share > end && share < 1 - end);
  if (slope.length < LEAST_SAMPLES) return null;
  const raw: number[] = [];
  for (let k = 0; k < POINTS; k++) {
    const at = k / (POINTS - 1);
    const half = 0.75 / (POINTS - 1);
    const near = slope.filter(({ share }) => Math.abs(share - at) <= half);
    if (near.length < 3) return null;
    raw.push(lineThrough(near, at));
  }
  const rising = risen(raw);
  const [from, to] = [rising[0]!, rising.at(-1)!];
  const widthDeg = to - from;
  if (widthDeg <= 0) return null;
  const places = rising.map((turn) => Math.round(((turn - from) / widthDeg) * 1000) / 1000);
  const off = slope.map(({ turnDeg, share }) => turnDeg - at(rising, share));
  return { channel, places, widthDeg, scatterDeg: sturdySigma(off), samples: slope.length };
}

/** Turn at a share of the swing by a straight line through samples around it; their median where the line is not steep. */
function lineThrough(near: readonly SlopeSample[], share: number): number {
  const n = near.length;
  const meanShare = near.reduce((sum, s) => sum + s.share, 0) / n;
  const meanTurn = near.reduce((sum, s) => sum + s.turnDeg, 0) / n;
  const sxx = near.reduce((sum, s) => sum + (s.share - meanShare) ** 2, 0);
  const sxy = near.reduce((sum, s) => sum + (s.share - meanShare) * (s.turnDeg - meanTurn), 0);
  return sxx > 1e-9 && sxy > 0
    ? meanTurn + (sxy / sxx) * (share - meanShare)
    : medianOf(near.map((s) => s.turnDeg));
}

/** The nearest list that never falls. @source pool adjacent violators, Ayer et al., Ann. Math. Stat. 26 (1955) 641, value from memory */
function risen(values: readonly number[]): number[] {
  const blocks: { sum: number; count: number }[] = [];
  for (const value of values) {
    blocks.push({ sum: value, count: 1 });
    while (blocks.length > 1) {
      const [a, b] = [blocks.at(-2)!, blocks.at(-1)!];
      if (a.sum / a.count <= b.sum / b.count) break;
      blocks.splice(-2, 2, { sum: a.sum + b.sum, count: a.count + b.count });
    }
  }
  return blocks.flatMap(({ sum, count }) => new Array<number>(count).fill(sum / count));
}

/** Value of a list of equally spaced points at a share of its length. */
function at(points: readonly number[], share: number): number {
  const x = Math.min(1, Math.max(0, share)) * (points.length - 1);
  const from = Math.min(points.length - 2, Math.floor(x));
  return points[from]! + (x - from) * (points[from + 1]! - points[from]!);
}

/**
 * Counts of each channel across its edges, and what reading between the edges by them would gain.
 *
 * @param widths - First estimate of the turn across an edge. [deg], n = channels
 * @param windowLevel - Level of the code that is lit.
 * @source derived: between edges the error is even over what is left of the step; on an edge it is the scatter.
 */
export function interpolationOf(
  angles: FittedAngles,
  wiring: Wiring,
  levels: readonly ColumnLevels[],
  stretches: readonly Stretch[],
  path: readonly PathPiece[],
  widths: readonly (number | null)[],
  windowLevel: 0 | 1,
): Interpolation {
  const near = widths.map((width) => (width === null ? 0 : 1.2 * width));
  const samples = slopeSamples(angles, wiring, levels, stretches, path, near, windowLevel);
  const noiseShares = wiring.channels.map((wire) => {
    const level = wire && levels[wire.column]!;
    return level ? level.noiseCounts / (level.highPlateau - level.lowPlateau) : 1;
  });
  const curves = samples.map((some, c) => (near[c]! > 0 ? curveOf(c, some, noiseShares[c]!) : null));
  const { withDeg, withoutDeg } = errorsOf(angles.edges, curves);
  const gain = 1 - withDeg / withoutDeg;
  const used = curves.filter((curve) => curve !== null);
  const fewest = Math.min(...used.map((curve) => curve.samples), Infinity);
  const gainSigma = used.length === 0 ? 0 : (1 - gain) / Math.sqrt(2 * fewest);
  return {
    curves,
    rmsWithDeg: withDeg,
    rmsWithoutDeg: withoutDeg,
    gain,
    gainSigma,
    isOffered: used.length > 0 && gain - 2 * gainSigma > WORTH,
  };
}

/** Root mean square error over the turn, with curves and without. [deg] */
function errorsOf(
  edges: readonly BuiltEdge[],
  curves: readonly (EdgeCurve | null)[],
): { withDeg: number; withoutDeg: number } {
  const sorted = [...edges].sort((a, b) => a.atDeg - b.atDeg);
  let [square, bare] = [0, 0];
  for (const [i, edge] of sorted.entries()) {
    const next = sorted[(i + 1) % sorted.length]!;
    const width = Math.max(0, next.atDeg - edge.atDeg + (i + 1 === sorted.length ? 360 : 0));
    const sigma = (edge.sigmaDeg ** 2 + next.sigmaDeg ** 2) / 4;
    bare += width ** 3 / 12 + width * sigma;
    const [mine, other] = [curves[edge.channel], curves[next.channel]];
    const [left, right] = [
      Math.min((mine?.widthDeg ?? 0) / 2, width / 2),
      Math.min((other?.widthDeg ?? 0) / 2, width / 2),
    ];
    square += left * ((mine?.scatterDeg ?? 0) ** 2 + edge.sigmaDeg ** 2);
    square += right * ((other?.scatterDeg ?? 0) ** 2 + next.sigmaDeg ** 2);
    const clear = width - left - right;
    square += clear ** 3 / 12 + clear * sigma;
  }
  return { withDeg: Math.sqrt(square / 360), withoutDeg: Math.sqrt(bare / 360) };
}
