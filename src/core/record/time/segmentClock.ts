import { ArrivalClock, isSetClock, NO_ARRIVAL, type ArrivalState, type Placed } from './arrivalClock.ts';
import {
  CounterUnwrap,
  NO_COUNTER,
  type CounterReading,
  type CounterRule,
  type CounterState,
} from './counterUnwrap.ts';
import { placedInstant, type Moment, type Placement, type SegmentSpan } from './placeSegments.ts';

/** One reading of a counter, in a run of the controller and, where anything tells it, in time. */
export interface Clocked {
  readonly step: 'first' | 'next' | 'same' | 'wrapped' | 'restarted' | 'went-back';
  /** 0 for the first run of the source. [-] */
  readonly segment: number;
  /** Unwrapped counter of the run. [ms] */
  readonly sinceStartMs: number;
  /** Usual time between two readings, or `null` before it is known. [ms] */
  readonly usualStepMs: number | null;
  /** This machine's clock was set while the controller went on. */
  readonly hostStepped: boolean;
  /** `null` where neither arrival nor moment tells the time. */
  readonly placed: Placed | null;
  /** Which way the time was found. */
  readonly by: 'arrival' | 'moments' | 'neighbours' | null;
}

/** The run that is going on. */
interface OpenSpan {
  readonly segment: number;
  readonly fromLine: number;
  toLine: number;
  readonly fromMs: number;
  toMs: number;
  readonly known: readonly Moment[];
}

/** Everything a `SegmentClock` remembers. */
export interface SegmentClockState {
  readonly counter: CounterState;
  readonly arrival: ArrivalState;
  readonly open: OpenSpan | null;
}

/** Nothing seen yet. */
export const NO_SEGMENT: SegmentClockState = { counter: NO_COUNTER, arrival: NO_ARRIVAL, open: null };

/** Puts the counter of one source in time: runs told apart, each tied to arrivals or to remembered moments. */
export class SegmentClock {
  readonly #stream: number;
  readonly #placements: ReadonlyMap<number, Placement>;
  readonly #msPerCount: number;
  readonly #counter: CounterUnwrap;
  readonly #arrival: ArrivalClock;
  #open: OpenSpan | null;
  #closed: SegmentSpan[] = [];

  /**
   * @param stream - Source. [-]
   * @param placements - Of any source; those of this one are used.
   * @param rule - Unit and span of the counter. [ms], [-]
   * @param state - As `state` gave it.
   */
  constructor(
    stream: number,
    placements: readonly Placement[],
    rule: CounterRule,
    state: SegmentClockState = NO_SEGMENT,
  ) {
    this.#stream = stream;
    const own = placements.filter((placement) => placement.stream === stream);
    this.#placements = new Map(own.map((placement) => [placement.segment, placement]));
    this.#msPerCount = rule.msPerCount;
    this.#counter = new CounterUnwrap(rule, state.counter);
    this.#arrival = new ArrivalClock(state.arrival);
    this.#open = state.open && { ...state.open };
  }

  get state(): SegmentClockState {
    return {
      counter: this.#counter.state,
      arrival: this.#arrival.state,
      open: this.#open && { ...this.#open },
    };
  }

  /** Usual time between two readings, or `null` before it is known. [ms] */
  get usualStepMs(): number | null {
    const { stepCounts } = this.#counter.state;
    return stepCounts === null ? null : stepCounts * this.#msPerCount;
  }

  /** Runs that have ended since the last call. */
  drainSpans(): SegmentSpan[] {
    const spans = this.#closed;
    this.#closed = [];
    return spans;
  }

  /** Ends the run that is going on. */
  end(): void {
    if (this.#open) this.#closed.push({ stream: this.#stream, ...this.#open });
    this.#open = null;
  }

  /**
   * @param line - Line of the source. [-]
   * @param reading - Counter and what else is known; an arrival that no set clock shows counts as none.
   */
  take(line: number, reading: CounterReading): Clocked {
    const arrivedMs = reading.arrivedMs !== null && isSetClock(reading.arrivedMs) ? reading.arrivedMs : null;
    const { count, lineNumber, saidStart } = reading;
    const { step, sinceStartMs } = this.#counter.take({ count, lineNumber, arrivedMs, saidStart });
    const begins = step === 'first' || step === 'restarted' || step === 'went-back';
    if (begins) this.#arrival.reset();
    this.#span(line, sinceStartMs, begins);
    const { segment } = this.#open!;
    const placement = this.#placements.get(segment);
    const clocked = (placed: Placed | null, by: Clocked['by'], hostStepped: boolean): Clocked => ({
      step,
      segment,
      sinceStartMs,
      usualStepMs: this.usualStepMs,
      hostStepped,
      placed,
      by,
    });
    if (placement) return clocked(placedInstant(sinceStartMs, placement), placement.by, false);
    if (arrivedMs === null) return clocked(null, null, false);
    const arrived = this.#arrival.take(sinceStartMs, arrivedMs);
    return clocked(arrived, 'arrival', arrived.hostStepped);
  }

  #span(line: number, sinceStartMs: number, begins: boolean): void {
    const open = this.#open;
    if (open && !begins) {
      open.toLine = line;
      open.toMs = sinceStartMs;
      return;
    }
    const segment = open ? open.segment + 1 : 0;
    this.end();
    this.#open = {
      segment,
      fromLine: line,
      toLine: line,
      fromMs: sinceStartMs,
      toMs: sinceStartMs,
      known: [],
    };
  }
}
