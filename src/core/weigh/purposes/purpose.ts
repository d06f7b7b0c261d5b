import type { Degrees } from '../../units/index.ts';

/** What a reading is for, and what that asks of an instrument. */
export interface Purpose {
  readonly name: string;
  readonly title: string;
  /** Equal steps of a turn. [-] */
  readonly positions: number;
  /** Largest error of one reading. [deg] */
  readonly accuracyDeg: Degrees;
  /** Over how long readings are averaged; `null` where each stands for itself. [s] */
  readonly averageS: number | null;
  /** Air moves the shaft: readings wobble, and a mean of them tells more than one. */
  readonly isWind: boolean;
  /** Why these numbers. */
  readonly why: string;
}
