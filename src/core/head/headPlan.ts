import type { Board } from '../boards/index.ts';
import type { DiscPlan } from '../disc/index.ts';
import type { Problem } from '../error/index.ts';
import type { Degrees } from '../units/index.ts';
import type { CircuitSpec, HeadSpec } from './headSpec.ts';
import type { LadderPlan } from './circuit/ladder.ts';
import type { MarkPlan } from './marks/markPlan.ts';

/** One light sensor in its place. */
export interface ChannelPlan {
  readonly channel: number;
  /** Index of its track in the code table. */
  readonly track: number;
  readonly radiusMm: number;
  /** Angle of the head at which it stands. [deg] */
  readonly angleDeg: Degrees;
}

/** What a channel's light becomes at the converter, and where it is cut in two. */
export interface Levels {
  /** Fixed resistor used. [ohm] */
  readonly resistorOhm: number;
  /** Resistor with the widest swing, before rounding to a series. [ohm] */
  readonly bestResistorOhm: number;
  /** Counts with the window fully open, before rounding down. [counts] */
  readonly litCounts: number;
  /** Counts behind solid land. [counts] */
  readonly darkCounts: number;
  /** The two thresholds, lower and upper. [counts] */
  readonly lowCounts: number;
  readonly highCounts: number;
  /** Light level (0..1 between dark and lit) at which a channel going light is called lit. [-] */
  readonly risingLight: number;
  /** Light level at which a channel going dark is called dark. [-] */
  readonly fallingLight: number;
  /** Distance from the lit counts to the nearer threshold, and from the dark counts. [counts] */
  readonly litMarginCounts: number;
  readonly darkMarginCounts: number;
  /** Those margins in standard deviations of one conversion. [sigma] */
  readonly litMarginSigma: number;
  readonly darkMarginSigma: number;
  /** Largest resistance the converter looks into. [ohm] */
  readonly sourceOhm: number;
  /** Share of the voltage of the channel before that is still there when one is measured; 0 behind gates. [-] */
  readonly unsettled: number;
  /** From light coming to the threshold, and from light going. [ms] */
  readonly riseLagMs: number;
  readonly fallLagMs: number;
}

/** How fast the shaft may turn and still be read at every position. */
export interface SpeedLimit {
  /** Longest time between two reads of a channel: one read of all, and a line written in between. [ms] */
  readonly loopMs: number;
  readonly lagMs: number;
  readonly limitDegPerS: number;
}

/** Slowest turn that an instrument may be asked to follow: a turn an hour. [deg/s] */
export const LEAST_TURN_RATE_DEG_PER_S = 0.1;

/** How fast lines leave the controller and the shaft may turn. */
export interface Rate {
  /** Serial speed. [bit/s] */
  readonly baud: number;
  /** Characters of one line, its end included. [-] */
  readonly lineChars: number;
  /** Fastest turn the instrument must follow. [deg/s] */
  readonly turnRateDegPerS: number;
}

/** Lights and sensors placed, and how their signals read. */
export interface HeadPlan {
  readonly disc: DiscPlan;
  /** As asked for, its detector as measured behind something dense, in the dark: what another plan begins from. */
  readonly asked: HeadSpec;
  /** As asked for, its detector with the light that passes lands and the sky's. */
  readonly spec: HeadSpec;
  readonly circuit: CircuitSpec;
  readonly board: Board;
  /** How fast lines leave the controller and the shaft may turn. */
  readonly rate: Rate;
  /** n = channels of the code */
  readonly channels: readonly ChannelPlan[];
  readonly levels: Levels;
  /** How three marks are told apart; `null` for a disc of windows and lands. */
  readonly marks: MarkPlan | null;
  /** All channels on one wire; `null` for every other input. */
  readonly ladder: LadderPlan | null;
  readonly speed: SpeedLimit;
  /** Why the head cannot read its disc at all; empty when it can. */
  readonly faults: readonly Problem[];
  /** What a maker should know but that does not stop the work. */
  readonly warnings: readonly Problem[];
}
