import type { Word } from '../../codes/index.ts';
import { wrapDegrees, type Degrees } from '../../units/index.ts';
import type { BuiltEdge, FittedAngles } from '../angles/fitAngles.ts';
import type { CodeWalk } from '../wiring/codeWalk.ts';
import type { Followed } from '../wiring/followed.ts';

/** One position of the disc as it was made. */
export interface BuiltPosition {
  readonly position: number;
  readonly word: Word;
  /** Middle of the piece of the turn that shows the word, as a disc angle. [deg], [0, 360) */
  readonly centreDeg: Degrees;
  /** From that middle to either end; 0 when it never shows. [deg] */
  readonly halfWidthDeg: Degrees;
  /** Standard error of the middle. [deg] */
  readonly sigmaDeg: Degrees;
  /** Width beside the drawn step. [-], 1 = as drawn */
  readonly widthShare: number;
  /** Whether the word itself, or both its edges, were seen. */
  readonly seen: boolean;
}

/** A word wider than this many steps has swallowed a neighbour. [-] */
const NEVER_ENDING = 1.75;

/** True for a word that goes on into what should be its neighbour. */
export function isNeverEnding({ widthShare }: BuiltPosition): boolean {
  return widthShare > NEVER_ENDING;
}

/** Edges of each boundary. */
function edgesByBoundary(edges: readonly BuiltEdge[], boundaries: number): BuiltEdge[][] {
  const all: BuiltEdge[][] = Array.from({ length: boundaries }, () => []);
  for (const edge of edges) all[edge.boundary]!.push(edge);
  return all;
}

/** Share of a distance that two edges have no common cause to be off by: their errors are taken as independent. */
const halved = (a: number, b: number): number => Math.hypot(a, b) / 2;

/**
 * Every position with the piece of the turn that shows its word.
 *
 * Where several channels change at one boundary the word is whole only between the last of one boundary and the first of
 * the next.
 *
 * @check src/core/fit/angles/fitAngles.test.ts
 */
export function builtTable(walk: CodeWalk, angles: FittedAngles, { dwellMs }: Followed): BuiltPosition[] {
  const { code } = walk;
  const byBoundary = edgesByBoundary(angles.edges, walk.boundaries.length);
  const stepDeg = 360 / code.positions;
  const rows: BuiltPosition[] = [];
  for (const [gap, word] of walk.words.entries()) {
    const position = code.positionOf(word);
    if (position === null) continue;
    const next = (gap + 1) % walk.boundaries.length;
    const turn = next <= gap ? 360 : 0;
    const first = byBoundary[gap]!.reduce((a, b) => (b.atDeg > a.atDeg ? b : a));
    const last = byBoundary[next]!.reduce((a, b) => (b.atDeg < a.atDeg ? b : a));
    const width = Math.max(0, last.atDeg + turn - first.atDeg);
    rows.push({
      position,
      word,
      centreDeg: wrapDegrees((first.atDeg + last.atDeg + turn) / 2),
      halfWidthDeg: width / 2,
      sigmaDeg: halved(first.sigmaDeg, last.sigmaDeg),
      widthShare: width / stepDeg,
      seen: dwellMs[gap]! > 0 || (width > 0 && first.seen > 0 && last.seen > 0),
    });
  }
  return rows.sort((a, b) => a.position - b.position);
}

/** Error of a table against the turn. */
export interface TableError {
  /** Root mean square error over the turn, the steps' own width included. [deg] */
  readonly rmsDeg: Degrees;
  /** Largest error where some word of the table shows. [deg] */
  readonly maxDeg: Degrees;
}

/** Two standard errors, beyond which 5 in 100 lie. */
const SURE = 2;

/**
 * Error left when every word is read as the middle of where it really stands.
 *
 * @source derived: even over a piece of width w the error has mean square w²/12, and w/2 at most.
 */
export function tableError(rows: readonly BuiltPosition[]): TableError {
  const shown = rows.filter(({ seen, halfWidthDeg }) => seen && halfWidthDeg > 0);
  const width = shown.reduce((sum, { halfWidthDeg }) => sum + 2 * halfWidthDeg, 0);
  const square = shown.reduce(
    (sum, { halfWidthDeg: h, sigmaDeg }) => sum + 2 * h * ((2 * h) ** 2 / 12 + sigmaDeg ** 2),
    0,
  );
  return {
    rmsDeg: width > 0 ? Math.sqrt(square / width) : 0,
    maxDeg: shown.reduce(
      (most, { halfWidthDeg, sigmaDeg }) => Math.max(most, halfWidthDeg + SURE * sigmaDeg),
      0,
    ),
  };
}
