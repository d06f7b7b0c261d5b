/** A counter of 32 bits starts again at 0 after this many counts. [-] */
export const COUNTER_SPAN = 4_294_967_296;

/** What a counter counts and where it ends. */
export interface CounterRule {
  /** Time of one count: 0.001 for microseconds, 1 for milliseconds, 1000 for seconds. [ms] */
  readonly msPerCount: number;
  /** Where it starts again at 0: 2^32, or 86 400 000 for a time of day. [-] */
  readonly span: number;
}

/** One value of a counter, with what else is known about its line. */
export interface CounterReading {
  readonly count: number;
  /** Number of the line in the controller's own count, or `null`. [-] */
  readonly lineNumber: number | null;
  /** Clock of this machine when the line came, or `null`. [ms UTC] */
  readonly arrivedMs: number | null;
  /** The controller has just said that it started. */
  readonly saidStart: boolean;
}

/** What a reading told. */
export interface Counted {
  /** `wrapped`: the counter began again and the time goes on; `restarted` and `went-back` begin a new segment. */
  readonly step: 'first' | 'next' | 'same' | 'wrapped' | 'restarted' | 'went-back';
  /** Time since the counter of this segment was 0, unwrapped. [ms] */
  readonly sinceStartMs: number;
}

/** Everything `CounterUnwrap` remembers, as it can be stored. */
export interface CounterState {
  readonly last: number | null;
  readonly wraps: number;
  readonly stepCounts: number | null;
  readonly lineNumber: number | null;
  readonly arrivedMs: number | null;
}

/** Nothing seen yet. */
export const NO_COUNTER: CounterState = {
  last: null,
  wraps: 0,
  stepCounts: null,
  lineNumber: null,
  arrivedMs: null,
};

/** Clocks of two makes differ by less than this share [-] and this much [ms]; a ceramic resonator is good to 0.5 %. */
const DRIFT_SHARE = 0.005;
const SLACK_MS = 5000;
/** Rounds are only counted by arrival times while these are surer than this share of a round. [-] */
const ROUND_SURE = 1 / 8;
/** A counter that falls from this near its end to this near its start has wrapped, when nothing else tells. [-] */
const WRAP_SHARE = 0.02;
/** A wrap is sure when the step over it is at most this many usual steps. [-] */
const SURE_STEPS = 10;

/**
 * Makes a time that goes on out of a counter that starts again at 0, and tells a restart from a wrap.
 *
 * A restart resets the line number too; a wrap does not. Without line numbers the last value tells: a wrap comes from
 * near the end. With arrival times whole rounds during an outage are found as well.
 *
 * @check src/core/record/time/counterUnwrap.test.ts
 */
export class CounterUnwrap {
  readonly #rule: CounterRule;
  #state: CounterState;

  /**
   * @param rule - Unit and span of the counter. [ms], [-]
   * @param state - As `state` gave it, to go on from there.
   */
  constructor(rule: CounterRule, state: CounterState = NO_COUNTER) {
    this.#rule = rule;
    this.#state = state;
  }

  get state(): CounterState {
    return this.#state;
  }

  /** Time since the counter was 0, of the next reading. [ms] */
  take(reading: CounterReading): Counted {
    const { last } = this.#state;
    if (last === null || reading.saidStart)
      return this.#begin(reading, last === null ? 'first' : 'restarted');
    const wraps = this.#roundsSince(last, reading);
    if (wraps === 'restarted' || wraps === 'went-back') return this.#begin(reading, wraps);
    return this.#goOn(reading, last, wraps);
  }

  #begin(reading: CounterReading, step: Counted['step']): Counted {
    const { count, lineNumber, arrivedMs } = reading;
    const { stepCounts } = this.#state;
    this.#state = { last: count, wraps: 0, stepCounts, lineNumber, arrivedMs };
    return { step, sinceStartMs: count * this.#rule.msPerCount };
  }

  #goOn(reading: CounterReading, last: number, rounds: number): Counted {
    const { count, lineNumber, arrivedMs } = reading;
    const { span, msPerCount } = this.#rule;
    const state = this.#state;
    const step = count - last + rounds * span;
    const lines = lineNumber === null || state.lineNumber === null ? 1 : lineNumber - state.lineNumber;
    const each = lines > 0 ? step / lines : step;
    const stepCounts = state.stepCounts === null ? each : Math.min(each, state.stepCounts * 1.5 + 1);
    const wraps = state.wraps + rounds;
    this.#state = { last: count, wraps, stepCounts, lineNumber, arrivedMs: arrivedMs ?? state.arrivedMs };
    return {
      step: rounds > 0 ? 'wrapped' : step === 0 ? 'same' : 'next',
      sinceStartMs: (wraps * span + count) * msPerCount,
    };
  }

  /** By how much the clock of this machine went more than the counter, when that is too much; else `null`. [ms] */
  #differMs(before: number | null, arrivedMs: number | null, countedMs: number): number | null {
    if (before === null || arrivedMs === null) return null;
    const differ = arrivedMs - before - countedMs;
    return Math.abs(differ) > SLACK_MS + DRIFT_SHARE * Math.abs(countedMs) ? differ : null;
  }

  /** Whole rounds between the last reading and this one, or that it is no later reading of the same run. */
  #roundsSince(last: number, reading: CounterReading): number | 'restarted' | 'went-back' {
    const { count, lineNumber, arrivedMs } = reading;
    const { span, msPerCount } = this.#rule;
    const before = this.#state;
    const numbered = lineNumber !== null && before.lineNumber !== null;
    const goesOn = numbered && (lineNumber > before.lineNumber! || this.#numberWrapped(lineNumber));
    if (numbered && !goesOn && count !== last) return 'restarted';
    const differ = this.#differMs(before.arrivedMs, arrivedMs, (count - last) * msPerCount);
    if (differ !== null && differ > 0) {
      const rounds = Math.round(differ / (span * msPerCount));
      const left = this.#differMs(before.arrivedMs, arrivedMs, (count - last + rounds * span) * msPerCount);
      if (rounds > 0 && left === null && !this.#runsOn(reading, last) && this.#isSure(differ)) return rounds;
      if (count >= last && !goesOn) return 'restarted';
    }
    if (count >= last) return 0;
    if (goesOn) return 1;
    return this.#looksWrapped(last, count) ? 1 : 'went-back';
  }

  #isSure(differMs: number): boolean {
    const { span, msPerCount } = this.#rule;
    return SLACK_MS + DRIFT_SHARE * differMs < ROUND_SURE * span * msPerCount;
  }

  /** The numbered lines follow each other by their usual step, so it is another clock that jumped. */
  #runsOn({ count, lineNumber }: CounterReading, last: number): boolean {
    const before = this.#state;
    if (lineNumber === null || before.lineNumber === null || before.stepCounts === null) return false;
    const usual = (lineNumber - before.lineNumber) * before.stepCounts;
    return usual > 0 && Math.abs(count - last - usual) < 0.5 * usual;
  }

  #numberWrapped(lineNumber: number): boolean {
    const before = this.#state.lineNumber!;
    return before > COUNTER_SPAN * (1 - WRAP_SHARE) && lineNumber < COUNTER_SPAN * WRAP_SHARE;
  }

  #looksWrapped(last: number, count: number): boolean {
    const { span } = this.#rule;
    const step = count + span - last;
    const { stepCounts } = this.#state;
    if (stepCounts !== null && step <= SURE_STEPS * stepCounts) return true;
    return last > (1 - WRAP_SHARE) * span && count < WRAP_SHARE * span;
  }
}
