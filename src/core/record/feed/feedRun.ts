import type { Line } from '../line.ts';
import { DRIFT_SHARE, tieWithinMs, type Placed } from '../time/arrivalClock.ts';
import { COUNTER_SPAN } from '../time/counterUnwrap.ts';
import type { SegmentClockState } from '../time/segmentClock.ts';

/** One run of a controller, as far as late lines need it. */
export interface FeedRun {
  /** Number of its last line. [-] */
  readonly lineNumber: number;
  /** Unwrapped counter of that line. [ms] */
  readonly sinceStartMs: number;
  /** Usual time from line to line. [ms] */
  readonly stepMs: number;
  /** When its counter was 0 [ms UTC], and how far off that can be. [ms] */
  readonly zeroMs: number;
  readonly withinMs: number;
}

/** How far the counter of a late line may be off the usual steps, as a share of a step and of the time. [-] */
const STEP_SHARE = 0.75;
const TIME_SHARE = 0.02;
/** Clocks of two workers differ by less than this. [ms] */
const CLOCKS_MS = 5000;

/** The run that a clock is in; `null` before two numbered lines of it were tied to a time. */
export function runOf({ counter, arrival }: SegmentClockState): FeedRun | null {
  const { last, wraps, lineNumber, stepCounts } = counter;
  if (last === null || lineNumber === null || stepCounts === null || arrival.zeroMs === null) return null;
  return {
    lineNumber,
    sinceStartMs: wraps * COUNTER_SPAN + last,
    stepMs: stepCounts,
    zeroMs: arrival.zeroMs,
    withinMs: tieWithinMs(arrival),
  };
}

/**
 * Unwrapped counter of a line if it fits a run, whether before or after the last line of that; else `null`. [ms]
 *
 * @param line - Its number [-] and counter [ms] tell.
 */
export function countInRun(run: FeedRun, line: Line): number | null {
  const lines = line.lineNumber - run.lineNumber;
  const expected = run.sinceStartMs + lines * run.stepMs;
  const rounds = Math.round((expected - line.sinceStartMs) / COUNTER_SPAN);
  const sinceStartMs = line.sinceStartMs + rounds * COUNTER_SPAN;
  const most = STEP_SHARE * run.stepMs + TIME_SHARE * Math.abs(lines * run.stepMs);
  return sinceStartMs >= 0 && Math.abs(sinceStartMs - expected) <= most ? sinceStartMs : null;
}

/** Whether a counter of a run lies beyond an instant, so that the line cannot be of that run. [ms], [ms UTC] */
export function isBeyond(run: FeedRun, sinceStartMs: number, instantMs: number): boolean {
  return run.zeroMs + sinceStartMs > instantMs + CLOCKS_MS;
}

/** Where a counter of a run lies in time. [ms] */
export function placedInRun(run: FeedRun, sinceStartMs: number): Placed {
  const drift = DRIFT_SHARE * Math.abs(run.sinceStartMs - sinceStartMs);
  return { atMs: run.zeroMs + sinceStartMs, withinMs: Math.ceil(run.withinMs + drift) };
}
