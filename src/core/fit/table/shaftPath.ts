import type { FittedAngles } from '../angles/fitAngles.ts';
import type { Crossing } from '../wiring/followed.ts';

/** Where the vane stood over time, as a disc angle, between the edges that were seen to pass. */
export interface PathPiece {
  readonly stretch: number;
  /** Rising. [ms], n ≥ 2 */
  readonly timesMs: readonly number[];
  /** Disc angle that the vane's own angle stands for, counted on over turns. [deg], n the same */
  readonly anglesDeg: readonly number[];
  /** True where the hand turned smoothly up to the point; false after a stop or turning back. n the same */
  readonly isSmooth: readonly boolean[];
  /** Slope at each point, so that the curve never goes back between them. [deg/ms], n the same */
  readonly slopes: readonly number[];
}

/** Slopes of a curve through points that rises or falls wherever they do. @source Fritsch & Carlson, SIAM J. Numer. Anal. 17 (1980) 238, value from memory */
function slopesOf(times: readonly number[], angles: readonly number[]): number[] {
  const secants = times
    .slice(1)
    .map((time, i) => (angles[i + 1]! - angles[i]!) / Math.max(1e-6, time - times[i]!));
  return times.map((_, i) => {
    const [before, after] = [secants[i - 1], secants[i]];
    if (before === undefined || after === undefined) return before ?? after ?? 0;
    if (before * after <= 0) return 0;
    const [left, right] = [times[i]! - times[i - 1]!, times[i + 1]! - times[i]!];
    const [w1, w2] = [2 * right + left, right + 2 * left];
    return (w1 + w2) / (w1 / before + w2 / after);
  });
}

/** The path of the vane through every crossing, with the edges where they really are. */
export function shaftPath(
  angles: FittedAngles,
  crossings: readonly Crossing[],
  boundaries: number,
): PathPiece[] {
  const at = new Map(angles.edges.map((edge) => [edge.boundary * 64 + edge.channel, edge.atDeg]));
  const play = angles.playDeg?.value ?? 0;
  const smooth = new Set(angles.chains.flatMap((chain) => chain.crossings.slice(1)));
  const stretches = [...new Set(crossings.map(({ stretch }) => stretch))];
  return stretches.flatMap((stretch): PathPiece[] => {
    const timesMs: number[] = [];
    const anglesDeg: number[] = [];
    const isSmooth: boolean[] = [];
    for (const crossing of crossings) {
      if (crossing.stretch !== stretch) continue;
      if (timesMs.length > 0 && crossing.timeMs <= timesMs.at(-1)! + 1e-6) continue;
      const { boundary, channel, count, way, timeMs } = crossing;
      timesMs.push(timeMs);
      anglesDeg.push(
        at.get(boundary * 64 + channel)! + (360 * (count - boundary)) / boundaries + (way * play) / 2,
      );
      isSmooth.push(smooth.has(crossing));
    }
    return timesMs.length < 2
      ? []
      : [{ stretch, timesMs, anglesDeg, isSmooth, slopes: slopesOf(timesMs, anglesDeg) }];
  });
}

/** Index of the point at or before a moment; -1 before the first, and the last but one at most. */
export function pointBefore({ timesMs }: PathPiece, timeMs: number): number {
  if (timeMs < timesMs[0]! || timeMs > timesMs.at(-1)!) return -1;
  let [low, high] = [0, timesMs.length - 1];
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if (timesMs[middle]! <= timeMs) low = middle;
    else high = middle;
  }
  return low;
}

/** Angle of the vane at a moment after a point of the path. [deg] */
export function angleAfter(path: PathPiece, point: number, timeMs: number): number {
  const [t0, t1] = [path.timesMs[point]!, path.timesMs[point + 1]!];
  const [a0, a1] = [path.anglesDeg[point]!, path.anglesDeg[point + 1]!];
  const span = t1 - t0;
  const u = (timeMs - t0) / span;
  const [m0, m1] = [path.slopes[point]! * span, path.slopes[point + 1]! * span];
  return (
    (1 + 2 * u) * (1 - u) ** 2 * a0 + u * (1 - u) ** 2 * m0 + u * u * (3 - 2 * u) * a1 + u * u * (u - 1) * m1
  );
}
