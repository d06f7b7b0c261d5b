import type { Problem } from '../error/index.ts';
import type { ErrorBudget } from './budget/budgetItem.ts';
import type { FinePosition } from './fine/finePosition.ts';
import type { FieldEdit } from '../instrument/index.ts';
import type { Degrees } from '../units/index.ts';

/** How one turn, or many, was read. */
export interface ReadingErrors {
  /** Root mean square of shown minus true; `null` where no position ever shows. [deg] */
  readonly rmsDeg: Degrees | null;
  /** Largest of its magnitude; `null` where no position ever shows. [deg] */
  readonly maxDeg: Degrees | null;
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
  /** Builds never more than one step out; never more than the accuracy asked; never showing a word the code does not have. */
  readonly withinStep: Share;
  readonly withinAccuracy: Share;
  readonly alwaysLegal: Share;
  /** Root mean square error over all builds; `null` where none ever shows a position. [deg] */
  readonly rmsDeg: Degrees | null;
  /** Largest error of a build: median, 95 of 100, and the worst; a build that shows no position counts as 180. [deg] */
  readonly maxErrorDeg: { readonly p50: Degrees; readonly p95: Degrees; readonly worst: Degrees };
  /** Counts of the largest error of each build, in classes of `classDeg` from 0. */
  readonly histogram: { readonly classDeg: Degrees; readonly counts: readonly number[] };
  /** Mean share of the turn misread by more than one step. [-] */
  readonly misreadShare: number;
  readonly illegalShare: number;
  /** Builds in which at least one position is never shown. [-] */
  readonly unseenBuilds: Share;
}

/** A change of the design and what it does. */
export interface UsefulChange {
  readonly title: string;
  /** What to write in the instrument file, or to do. */
  readonly how: string;
  /** The same as fields of the instrument file. n ≥ 1 */
  readonly edits: readonly FieldEdit[];
  readonly verdict: 'yes' | 'no';
  readonly yield: Share;
  readonly p95Deg: Degrees;
  /** Fastest turn at which every position is still read. [deg/s] */
  readonly limitDegPerS: number;
}

/** One cause of error, and what it would be worth to be rid of it. */
export interface Cause {
  /** One of `causeNames`. */
  readonly cause: string;
  readonly title: string;
  /** Yield and 95-of-100 error with this cause alone removed, on the same builds. */
  readonly yieldWithout: Share;
  readonly p95WithoutDeg: Degrees;
  /** What this cause adds to the mean square error, as a share of all that making adds. [-] */
  readonly varianceShare: number;
  /** Factor on this cause's size alone at which the wanted yield is still reached; `null` where none is small enough. [-] */
  readonly loosestFactor: number | null;
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
  /** What puts a reading out, item by item. */
  readonly budget: ErrorBudget;
  /** As drawn, at the turn rate that is asked for. */
  readonly atTurnRate: ReadingErrors;
  /** Factor on all sizes together at which the wanted yield is still reached; `null` where none is small enough. [-] */
  readonly loosestFactor: number | null;
  /** The most useful changes, each with what it does on the same builds; most useful first. n ≤ 3 */
  readonly changes: readonly UsefulChange[];
  /** Whether the disc can be read between its steps. */
  readonly fine: FinePosition;
  /** The same disc with the other code, on the same builds; `null` when that code cannot make the count. */
  readonly rival: { readonly family: string; readonly builds: BuildStatistics; readonly why: string } | null;
  readonly warnings: readonly Problem[];
}
