/** Everything `ArrivalClock` remembers. */
export interface ArrivalState {
  /** Instant at which the counter was 0, as far as is known. [ms UTC], `null` before the first line */
  readonly zeroMs: number | null;
  /** [ms] */
  readonly sinceStartMs: number;
}

/** An instant and how far off it can be. */
export interface Placed {
  /** [ms UTC] */
  readonly atMs: number;
  /** The true instant lies within this much of it. [ms] */
  readonly withinMs: number;
}

/** Nothing seen yet. */
export const NO_ARRIVAL: ArrivalState = { zeroMs: null, sinceStartMs: 0 };

/** A counter may run slower than this machine's clock by this share; a ceramic resonator is good to 0.5 %. [-] */
const DRIFT_SHARE = 0.005;
/** Sending a line takes up to 128 ms at 9600 bit/s, and the way through the machine some more. [ms] */
const SENDING_MS = 150;

/** Clocks that show less or more than this were never set: 2010-01-01 and 2100-01-01. [ms UTC] */
const SET_FROM_MS = 1_262_304_000_000;
const SET_UNTIL_MS = 4_102_444_800_000;

/**
 * Whether an instant can be the true one; clocks that were never set show 1970 or 2000, broken ones 2165.
 *
 * @param atMs - [ms UTC]
 */
export function isSetClock(atMs: number): boolean {
  return atMs >= SET_FROM_MS && atMs < SET_UNTIL_MS;
}

/**
 * Ties a counter to this machine's clock by the lines that came with the least delay.
 *
 * A line can come late but never early, so the instant of count 0 is the lowest seen of arrival less counter; that
 * lowest may rise by 0.5 % of the time that passes, since the counter may be slow. The instants never go back.
 *
 * @source derived: arrival = zero + counter + delay, delay >= 0; lower envelope with a leak
 * @check src/core/record/time/arrivalClock.test.ts
 */
export class ArrivalClock {
  #state: ArrivalState;

  /** @param state - As `state` gave it, to go on from there. */
  constructor(state: ArrivalState = NO_ARRIVAL) {
    this.#state = state;
  }

  get state(): ArrivalState {
    return this.#state;
  }

  /** Forgets the tie, as after a restart. */
  reset(): void {
    this.#state = NO_ARRIVAL;
  }

  /**
   * @param sinceStartMs - Unwrapped counter, not less than before. [ms]
   * @param arrivedMs - [ms UTC]
   */
  take(sinceStartMs: number, arrivedMs: number): Placed {
    const { zeroMs, sinceStartMs: before } = this.#state;
    const direct = arrivedMs - sinceStartMs;
    const leaked = zeroMs === null ? direct : zeroMs + DRIFT_SHARE * (sinceStartMs - before);
    const zero = Math.min(direct, leaked);
    this.#state = { zeroMs: zero, sinceStartMs };
    const atMs = zero + sinceStartMs;
    return { atMs, withinMs: Math.ceil(arrivedMs - atMs) + SENDING_MS };
  }
}
