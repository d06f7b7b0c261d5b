import type { Degrees } from '../units/index.ts';

/** Mark on a track: 0 and 1, or 0, 1 and 2 on a three-colour disc. */
export type Level = 0 | 1 | 2;

/**
 * One ring of the disc: a cyclic pattern of levels, held as its runs.
 *
 * Run `i` begins at `startsDeg[i]` and ends where the next begins, the last one where the first begins.
 */
export interface Track {
  /** How many levels the track may carry: 2, or 3 for colours. */
  readonly levelCount: 2 | 3;
  /** Where each run begins, ascending. [deg], [0, 360), n ≥ 1 */
  readonly startsDeg: readonly Degrees[];
  /** Level of each run; neighbours differ, round the circle, unless there is only one run. */
  readonly levels: readonly Level[];
}

/** One light sensor: the track it looks at, and the angle of the head at which it stands. */
export interface Channel {
  /** Index of the track, 0 = innermost when the finest track is outside. */
  readonly track: number;
  /** Place on the head: at disc angle `a` of the head's reference line the channel sees `a + angleDeg`. [deg] */
  readonly angleDeg: Degrees;
}

/** Tracks and channels: all that a disc code is. */
export interface CodePlan {
  readonly tracks: readonly Track[];
  readonly channels: readonly Channel[];
}

/** What all channels read, one digit a channel, channel 0 first: `0100`. */
export type Word = string;

/** Fewest and most positions a disc can have: below 2 nothing is told apart, above 4096 no hand-made disc reads. */
export const POSITIONS_RANGE = { least: 2, most: 4096 } as const;

/** Most light sensors a head can have: beyond it no controller reads them in a turn, and no hand wires them. */
export const MOST_CHANNELS = 64;
