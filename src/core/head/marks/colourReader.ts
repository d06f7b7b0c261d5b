import type { Level } from '../../codes/index.ts';
import type { Rgb } from '../headSpec.ts';
import { rememberedChanges, type MarkChange, type MarkReader } from './markReader.ts';

/** Shares of red and green in all the light of a mark; blue is what is left. [-] */
export type Chromaticity = readonly [red: number, green: number];

/**
 * Shares of red and green of three counts.
 *
 * @param rgb - Counts with the dark reading taken off. [counts]
 * @returns Both shares. [-]
 * @source r = R/(R + G + B), g = G/(R + G + B): CIE chromaticity of the sensor's own primaries.
 */
export function chromaticityOf([red, green, blue]: Rgb): Chromaticity {
  const sum = red + green + blue;
  return [red / sum, green / sum];
}

/** What decides which colour a reading is. */
export interface ColourRule {
  /** Chromaticity of each level, as measured. n = 3 */
  readonly centroids: readonly Chromaticity[];
  /** Nearest over second nearest distance up to which a reading counts. [-], 0..1 */
  readonly rejectRatio: number;
  /** Sum of the three colours below which nothing is judged. [counts] */
  readonly leastSumCounts: number;
}

const LEVELS: readonly Level[] = [0, 1, 2];

/**
 * The nearest colour of a reading, or `null` where none is clearly nearest.
 *
 * @param rgb - Counts with the dark reading taken off. [counts]
 * @source nearest centroid with a reject zone: the nearest counts when d1/d2 is at most the ratio.
 * @check test/published/colour
 */
export function nearestColour(
  rgb: Rgb,
  { centroids, rejectRatio, leastSumCounts }: ColourRule,
): Level | null {
  const sum = rgb[0] + rgb[1] + rgb[2];
  if (!(sum >= leastSumCounts) || sum <= 0) return null;
  const [r, g] = chromaticityOf(rgb);
  const distances = centroids.map(([cr, cg]) => Math.hypot(r - cr, g - cg));
  const order = [...LEVELS].sort((a, b) => distances[a]! - distances[b]!);
  const [first, second] = order as [Level, Level];
  return distances[first]! <= rejectRatio * distances[second]! ? first : null;
}

/**
 * Reader of colours by nearest centroid.
 *
 * On the way from one mark to another the chromaticity runs along a straight line, and the places nearer to a centroid than
 * `rejectRatio` of the way to another make a circle of Apollonius: where the line enters it is a quadratic equation.
 *
 * @param marksRgbCounts - What each level sends back to this channel. [counts], n = 3
 * @param rule - Centroids and reject zone.
 * @source derived; Apollonius: |p − a| = k |p − b| is a circle for k ≠ 1.
 * @check src/core/head/marks/marks.test.ts (a fine scan of blends)
 */
export function colourReader(marksRgbCounts: readonly Rgb[], rule: ColourRule): MarkReader {
  const blend = (shares: readonly number[]): Rgb => {
    const sum = (colour: 0 | 1 | 2): number =>
      shares.reduce((total, share, level) => total + share * marksRgbCounts[level]![colour], 0);
    return [sum(0), sum(1), sum(2)];
  };
  return rememberedChanges({
    judge: (shares) => nearestColour(blend(shares), rule),
    changes: (from, to) => changesAlong(marksRgbCounts[from]!, marksRgbCounts[to]!, rule),
  });
}

function changesAlong(from: Rgb, to: Rgb, rule: ColourRule): MarkChange[] {
  const sumOf = ([red, green, blue]: Rgb): number => red + green + blue;
  const [before, after] = [sumOf(from), sumOf(to)];
  // The line runs evenly in the share of the sum, u, and not in the share of the spot, t: u = t S' / ((1 − t) S + t S').
  const spotShare = (u: number): number => (u * before) / (after * (1 - u) + u * before);
  const start = chromaticityOf(from);
  const end = chromaticityOf(to);
  return LEVELS.flatMap((level): MarkChange[] => {
    const [low, high] = acceptedAlong(start, end, level, rule);
    return low > high ? [] : [{ share: spotShare(low), level }];
  }).sort((a, b) => a.share - b.share);
}

/** Stretch of a line of chromaticities over which a level is accepted, as shares of the line; low above high for none. */
function acceptedAlong(
  start: Chromaticity,
  end: Chromaticity,
  level: Level,
  { centroids, rejectRatio }: ColourRule,
): [low: number, high: number] {
  let [low, high] = [0, 1];
  const square = rejectRatio * rejectRatio;
  const own = quadraticTo(start, end, centroids[level]!);
  for (const other of LEVELS) {
    if (other === level) continue;
    const rival = quadraticTo(start, end, centroids[other]!);
    // |p − own|² − ratio² |p − rival|² ≤ 0, with p running along the line.
    const [a, b, c] = own.map((term, i) => term - square * rival[i]!) as [number, number, number];
    const disc = b * b - 4 * a * c;
    if (disc < 0) return [1, 0];
    const root = Math.sqrt(disc);
    low = Math.max(low, (-b - root) / (2 * a));
    high = Math.min(high, (-b + root) / (2 * a));
  }
  return [low, high];
}

/** Square of the distance from a point along a line to a centroid, as a quadratic of the place along the line. */
function quadraticTo(
  start: Chromaticity,
  end: Chromaticity,
  centroid: Chromaticity,
): [number, number, number] {
  const [dx, dy] = [end[0] - start[0], end[1] - start[1]];
  const [x, y] = [start[0] - centroid[0], start[1] - centroid[1]];
  return [dx * dx + dy * dy, 2 * (x * dx + y * dy), x * x + y * y];
}
