import type { Problem } from '../error/index.ts';
import type { Degrees } from '../units/index.ts';

/** How one turn, or many, was read. */
export interface ReadingErrors {
  /** Root mean square of shown minus true. [deg] */
  readonly rmsDeg: Degrees;
  /** Largest of its magnitude. [deg] */
  readonly maxDeg: Degrees;
  /** Share of the turn shown more than one step from where the shaft is. [-] */
  readonly misreadShare: number;
  /** Share of the turn that shows a word the code does not have. [-] */
  readonly illegalShare: number;
  /** Positions never shown in the turn. */
  readonly unseenPositions: readonly number[];
}

/** A stretch of the turn over which the channels show one word. */
export interface ReadStretch {
  /** Disc angle at which the word begins to show, going clockwise, [0, 360); `toDeg` may pass 360. [deg] */
  readonly fromDeg: Degrees;
  readonly toDeg: Degrees;
  readonly word: string;
  /** Position of the word, or `null` where the code does not have it. */
  readonly position: number | null;
}

/** The design exactly as drawn, turned once each way. */
export interface ExactTurn {
  /** Stretches clockwise, with the disc angle growing and with it falling; each list covers the whole turn once. */
  readonly growing: readonly ReadStretch[];
  readonly falling: readonly ReadStretch[];
  /** The worse of the two ways in every figure. */
  readonly errors: ReadingErrors;
}

/** A share with the range that holds the true one in 95 of 100 cases. [-] */
export interface Share {
  readonly value: number;
  readonly low: number;
  readonly high: number;
}

/** Many seeded builds of one design. */
export interface BuildStatistics {
  readonly builds: number;
  readonly seed: number;
  /** Builds that meet the need everywhere in the turn, both ways round. */
  readonly yield: Share;
  /** Root mean square error over all builds. [deg] */
  readonly rmsDeg: Degrees;
  /** Largest error of a build: median, 95 of 100, and the worst. [deg] */
  readonly maxErrorDeg: { readonly p50: Degrees; readonly p95: Degrees; readonly worst: Degrees };
  /** Counts of the largest error of each build, in classes of `classDeg` from 0. */
  readonly histogram: { readonly classDeg: Degrees; readonly counts: readonly number[] };
  /** Mean share of the turn misread by more than one step. [-] */
  readonly misreadShare: number;
  readonly illegalShare: number;
  /** Builds in which at least one position is never shown. [-] */
  readonly unseenBuilds: Share;
}

/** One cause of error, and what it would be worth to be rid of it. */
export interface Cause {
  /** `edge`, `bore`, `placement`, `sensor`, `resistor` or `threshold`. */
  readonly cause: string;
  readonly title: string;
  /** Yield and 95-of-100 error with this cause alone removed, on the same builds. */
  readonly yieldWithout: Share;
  readonly p95WithoutDeg: Degrees;
  /** What the maker would do about it. */
  readonly advice: string;
}

/** Will it read right, and what to tighten first. */
export interface Proof {
  readonly verdict: 'yes' | 'no';
  /** Why, in sentences a maker reads. */
  readonly reasons: readonly string[];
  readonly exactTurn: ExactTurn;
  readonly builds: BuildStatistics;
  /** Most worthwhile first. */
  readonly causes: readonly Cause[];
  /** The same disc with the other code, on the same builds; `null` when that code cannot make the count. */
  readonly rival: { readonly family: string; readonly builds: BuildStatistics; readonly why: string } | null;
  readonly warnings: readonly Problem[];
}
