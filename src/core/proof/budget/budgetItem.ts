import type { Degrees } from '../../units/index.ts';

/** Scattered causes are told at so many standard deviations: 95 of 100 lie within. [-] */
export const BUDGET_SIGMA = 2;

/** Everything that moves a reading, by name. */
export const budgetItemNames = [
  'quantisation',
  'edge',
  'growth',
  'edge-bias',
  'hysteresis',
  'bore',
  'tilt',
  'tangential',
  'radial',
  'sensor',
  'resistor',
  'threshold',
  'temperature',
  'lamp-ageing',
  'creep',
  'daylight',
  'lag',
  'read-loop',
  'shaft',
  'north',
] as const;

/** Name of one item of an error budget. */
export type BudgetItemName = (typeof budgetItemNames)[number];

/** One cause of error and how far it can put a reading out by itself. */
export interface BudgetItem {
  readonly item: BudgetItemName;
  readonly title: string;
  /** `fixed` is the same on every build; `scattered` is drawn for each, and told at two standard deviations. */
  readonly kind: 'fixed' | 'scattered';
  /** Farthest that it moves a reading. [deg] */
  readonly maxDeg: Degrees;
  /** The formula in words and numbers, for a maker to follow. */
  readonly formula: string;
  readonly source: string;
}

/** All causes together, largest first. */
export interface ErrorBudget {
  readonly items: readonly BudgetItem[];
  /** "Your worst item is ...", in a sentence. */
  readonly worst: string;
  /** Fixed items added up, growth and bias with their signs, and scattered ones as the root of their squares. [deg] */
  readonly combinedDeg: Degrees;
}
