import type { Tool } from '../instrument/index.ts';
import type { Degrees } from '../units/index.ts';
import type { IndexWait } from './wait/indexWait.ts';
import type { Situation } from './situation.ts';

/**
 * What the sensing parts cost at most, by class, controller and housing not counted. [EUR]
 *
 * An assumption of ours for orders of magnitude, no source: your own shop knows better.
 */
export const costClasses = {
  lowest: { upToEur: 5 },
  low: { upToEur: 15 },
  middle: { upToEur: 40 },
  high: { upToEur: 100 },
} as const;

/** One of those classes. */
export type CostClass = keyof typeof costClasses;

/** One part of the largest error. */
export interface ErrorItem {
  readonly title: string;
  readonly deg: Degrees;
  /** How it comes about, with its numbers. */
  readonly how: string;
}

/** One argument about a principle for one need. */
export interface Finding {
  readonly isGood: boolean;
  /** What it does to the verdict when it is bad: nothing, needs care, or rules it out. */
  readonly costs: 'nothing' | 'care' | 'use';
  readonly text: string;
  /** What would turn it round, in words. */
  readonly change: string;
}

/** A gap in the turn where nothing is read, and how often the wind stands in it. */
export interface GapChance {
  readonly widthDeg: Degrees;
  /** With the gap's middle on north. [-], 0..1 */
  readonly atNorth: number;
  /** With the gap where the wind is rarest, and where that is. [-], 0..1 */
  readonly bestPlaced: number;
  readonly bestAtDeg: Degrees;
}

/** What can be reckoned of a principle for one need. */
export interface Figures {
  /** Share of the needed range in which nothing is read. [-], 0..1 */
  readonly deadShare: number;
  readonly gap: GapChance | null;
  /** How far it can turn; `null` without end. [deg] */
  readonly travelDeg: Degrees | null;
  /** Smallest step it tells apart. [deg] */
  readonly stepDeg: Degrees;
  readonly errors: readonly ErrorItem[];
  /** Largest error, items added. [deg] */
  readonly largestErrorDeg: Degrees;
  readonly powerLoss: 'kept' | 'until-index' | 'lost';
  /** Wait for the index at the heading most wind comes from; `null` for a principle without one. */
  readonly wait: IndexWait | null;
  /** The same with the index on north. */
  readonly waitAtNorth: IndexWait | null;
  /** Hours a year in which the direction is unknown; `null` = until someone sets it again. [h] */
  readonly unknownHPerYear: number | null;
  /** Turning moment it takes before the shaft moves. [N mm] */
  readonly frictionNmm: number;
  /** Until its contacts or its track are worn; `null` where nothing wears but the bearing. [years] */
  readonly lifeYears: number | null;
  /** Fastest turn it follows; `null` where it reads whatever the speed. [deg/s] */
  readonly limitDegPerS: number | null;
  /** Share of the time in which it cannot be read at all. [-], 0..1 */
  readonly blindShare: number;
  readonly showsFaults: boolean;
  /** What no other figure says. */
  readonly more: readonly Finding[];
}

/** A way of sensing: what it is, and what it comes to for one need. */
export interface Principle {
  readonly name: string;
  readonly title: string;
  /** How it works, in a sentence. */
  readonly about: string;
  readonly isDisc: boolean;
  /** A sensor on the axis needs a free end of the shaft. */
  readonly needsShaftEnd: boolean;
  readonly parts: readonly string[];
  /** Tools it asks for: one out of each list. */
  readonly tools: readonly (readonly Tool[])[];
  readonly costClass: CostClass;
  /** Work until it reads, parts at hand. An assumption of ours, no source. [h] */
  readonly workHours: number;
  figures(situation: Situation): Figures;
}

/** Figures of something that reads the whole turn, keeps its place, wears nowhere and needs no care. */
export const FLAWLESS: Omit<Figures, 'stepDeg' | 'errors' | 'largestErrorDeg'> = {
  deadShare: 0,
  gap: null,
  travelDeg: null,
  powerLoss: 'kept',
  wait: null,
  waitAtNorth: null,
  unknownHPerYear: 0,
  frictionNmm: 0,
  lifeYears: null,
  limitDegPerS: null,
  blindShare: 0,
  showsFaults: false,
  more: [],
};

/** Errors with their sum. [deg] */
export function withErrors(errors: readonly ErrorItem[]): Pick<Figures, 'errors' | 'largestErrorDeg'> {
  return { errors, largestErrorDeg: errors.reduce((sum, { deg }) => sum + deg, 0) };
}
