/** Everything `ArrivalClock` remembers. */
export interface ArrivalState {
  /** Instant at which the counter was 0, as far as is known. [ms UTC], `null` before the first line */
  readonly zeroMs: number | null;
  /** Counter and arrival of the line before. [ms], [ms UTC] */
  readonly sinceStartMs: number;
  readonly arrivedMs: number;
  /** Lines of this run so far. [-] */
  readonly lines: number;
  /** By how much the tie may have slipped since a line last came without delay. [ms] */
  readonly looseMs: number;
  /** Lines in a row that came far too late, and the spread of their delays. [-], [ms UTC] */
  readonly late: { readonly lines: number; readonly lowMs: number; readonly highMs: number } | null;
}

/** An instant and how far off it can be. */
export interface Placed {
  /** [ms UTC] */
  readonly atMs: number;
  /** The true instant lies within this much of it. [ms] */
  readonly withinMs: number;
}

/** Nothing seen yet. */
export const NO_ARRIVAL: ArrivalState = {
  zeroMs: null,
  sinceStartMs: 0,
  arrivedMs: 0,
  lines: 0,
  looseMs: 0,
  late: null,
};

/** A counter may run slower than this machine's clock by this share; a ceramic resonator is good to 0.5 %. [-] */
export const DRIFT_SHARE = 0.005;
/** Sending a line takes up to 128 ms at 9600 bit/s, and the way through the machine some more. [ms] */
const SENDING_MS = 150;
/** The first line of a run may have waited in a full buffer; more lines make that less likely. [ms] */
const FIRST_MS = 1000;
/** A line this late was held back on the way, or this machine's clock was set forward. [ms] */
const LATE_MS = 1000;
/** Arrivals that go back by this were read from a clock that was set back. [ms] */
const SET_BACK_MS = 5000;
/** So many late lines in a row, all equally late, tell that it was the clock; held-back lines catch up. [-], [ms] */
const LATE_LINES = 10;
const LATE_SPREAD_MS = 1000;

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

/** Clocks begin here when they were never set: 1970 on computers, 1980 on cards, 2000 in clock chips. [ms UTC] */
const BEGINNINGS_MS = [0, 315_532_800_000, 946_684_800_000];
/** One that was never set is rarely left running for longer. [ms] */
const UNSET_FOR_MS = 31 * 86_400_000;
/** 1900-01-01: before it nobody logged. [ms UTC] */
const FIRST_LOG_MS = -2_208_988_800_000;

/**
 * Whether a written date can be true; old logs may well be from before this machine.
 *
 * @param atMs - [ms UTC]
 */
export function isSetDate(atMs: number): boolean {
  if (atMs < FIRST_LOG_MS || atMs >= SET_UNTIL_MS) return false;
  return !BEGINNINGS_MS.some((begin) => atMs >= begin && atMs < begin + UNSET_FOR_MS);
}

/** How far off an instant near the last line can be. [ms] */
export function tieWithinMs({ lines, looseMs }: Pick<ArrivalState, 'lines' | 'looseMs'>): number {
  return Math.ceil(looseMs + FIRST_MS / lines) + SENDING_MS;
}

/** An instant found by an arrival. */
export interface Arrived extends Placed {
  /** This machine's clock was set while the controller went on; the counter is tied to it anew. */
  readonly hostStepped: boolean;
}

/**
 * Ties a counter to this machine's clock by the lines that came with the least delay.
 *
 * A line can come late but never early, so the instant of count 0 is the lowest seen of arrival less counter. Since
 * the counter may be slow, a line that is later by no more than 0.5 % of the time since the tie makes a new one.
 * Lines that were held back and then come all at once therefore keep the times at which they were sent.
 *
 * @source derived: arrival = zero + counter + delay, delay >= 0; lower envelope
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
  take(sinceStartMs: number, arrivedMs: number): Arrived {
    const { zeroMs, sinceStartMs: before, arrivedMs: arrivedBefore, looseMs } = this.#state;
    const direct = arrivedMs - sinceStartMs;
    if (zeroMs === null) return this.#tie(sinceStartMs, arrivedMs, false);
    if (arrivedMs < arrivedBefore - SET_BACK_MS) return this.#tie(sinceStartMs, arrivedMs, true);
    const loose = looseMs + DRIFT_SHARE * (sinceStartMs - before);
    const late = this.#late(direct, zeroMs);
    const lateMs = direct - zeroMs;
    if (late && late.lines >= LATE_LINES) return this.#tie(sinceStartMs, arrivedMs, lateMs > loose);
    if (lateMs <= Math.min(loose, LATE_MS))
      return this.#tie(sinceStartMs, arrivedMs, false, Math.max(0, lateMs));
    this.#state = { zeroMs, sinceStartMs, arrivedMs, lines: this.#state.lines + 1, looseMs: loose, late };
    return { atMs: zeroMs + sinceStartMs, withinMs: this.#withinMs(loose), hostStepped: false };
  }

  /** @param looseMs - By how much this line may be late itself. [ms] */
  #tie(sinceStartMs: number, arrivedMs: number, hostStepped: boolean, looseMs = 0): Arrived {
    const lines = hostStepped ? 1 : this.#state.lines + 1;
    this.#state = { zeroMs: arrivedMs - sinceStartMs, sinceStartMs, arrivedMs, lines, looseMs, late: null };
    return { atMs: arrivedMs, withinMs: this.#withinMs(looseMs), hostStepped };
  }

  #withinMs(looseMs: number): number {
    return tieWithinMs({ lines: this.#state.lines, looseMs });
  }

  #late(direct: number, zeroMs: number): ArrivalState['late'] {
    if (direct - zeroMs < LATE_MS) return null;
    const { late } = this.#state;
    if (!late || direct < late.highMs - LATE_SPREAD_MS || direct > late.lowMs + LATE_SPREAD_MS) {
      return { lines: 1, lowMs: direct, highMs: direct };
    }
    return {
      lines: late.lines + 1,
      lowMs: Math.min(late.lowMs, direct),
      highMs: Math.max(late.highMs, direct),
    };
  }
}
