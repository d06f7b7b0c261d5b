import type { Line } from '../line.ts';
import { COUNTER_SPAN } from '../time/counterUnwrap.ts';
import type { Clocked } from '../time/segmentClock.ts';
import { NO_SEGMENT, SegmentClock, type SegmentClockState } from '../time/segmentClock.ts';
import type { SegmentSpan } from '../time/placeSegments.ts';
import { lineSample, windOf } from './lineSample.ts';
import { ownPieces, type OwnPiece } from './ownLine.ts';
import { packSamples } from './packSamples.ts';
import type { ReadContext, TextLine } from './readContext.ts';
import { retimed, sampleFlags, sampleWith, type Sample } from './sample.ts';

/** What is remembered of the last good line. */
interface LastLine {
  readonly lineNumber: number;
  readonly sinceStartMs: number;
  readonly pulses: number | null;
}

/** Everything an `OwnReader` remembers. */
export interface OwnReaderState {
  readonly clock: SegmentClockState;
  readonly dayClock: SegmentClockState;
  readonly last: LastLine | null;
  /** Lines dropped since the last good one: they explain a gap. [-] */
  readonly dropped: number;
  /** The latest lines, to know a line that is sent again. */
  readonly recent: readonly string[];
  readonly lastAtMs: number | null;
}

/** Nothing read yet. */
export const NOTHING_READ: OwnReaderState = {
  clock: NO_SEGMENT,
  dayClock: NO_SEGMENT,
  last: null,
  dropped: 0,
  recent: [],
  lastAtMs: null,
};

/** Lines sent again come at most this many lines later. [-] */
const RECENT_MOST = 32;
/** A speed over more usual steps than this is no sample of the wind any more. [-] */
const SPEED_STEPS_MOST = 10;
/** Light levels change slowly: counts of one line in this time are kept. [ms] */
const COUNTS_EVERY_MS = 60_000;
const DAY_MS = 86_400_000;
/** How far off the arrival of a sentence without a counter can be. [ms] */
const SENTENCE_WITHIN_MS = 1000;

/** Reads lines that say themselves what they are: our own, wind sentences and packs. */
export class OwnReader {
  readonly #context: ReadContext;
  readonly #clock: SegmentClock;
  readonly #dayClock: SegmentClock;
  #last: LastLine | null;
  #dropped: number;
  readonly #recent: string[];
  #lastAtMs: number | null;

  /** @param state - As `state` gave it, to go on from there. */
  constructor(context: ReadContext, state: OwnReaderState = NOTHING_READ) {
    this.#context = context;
    const { head, rule } = context;
    this.#clock = new SegmentClock(
      head.stream,
      rule.placements,
      { msPerCount: 1, span: COUNTER_SPAN },
      state.clock,
    );
    this.#dayClock = new SegmentClock(
      head.stream,
      rule.placements,
      { msPerCount: 1, span: DAY_MS },
      state.dayClock,
    );
    this.#last = state.last;
    this.#dropped = state.dropped;
    this.#recent = [...state.recent];
    this.#lastAtMs = state.lastAtMs;
  }

  get state(): OwnReaderState {
    return {
      clock: this.#clock.state,
      dayClock: this.#dayClock.state,
      last: this.#last,
      dropped: this.#dropped,
      recent: [...this.#recent],
      lastAtMs: this.#lastAtMs,
    };
  }

  /** Runs of the controller that have ended since the last call. */
  drainSpans(): SegmentSpan[] {
    return [...this.#clock.drainSpans(), ...this.#dayClock.drainSpans()];
  }

  /** Ends the run that is going on. */
  end(): void {
    this.#clock.end();
    this.#dayClock.end();
  }

  /** One line; gives back whether anything in it could be read. */
  take(line: TextLine): boolean {
    const pieces = ownPieces(line.text);
    const good = pieces.filter(({ holds }) => holds.kind !== 'bad').length;
    if (pieces.length > 1 && good === pieces.length)
      this.#context.ledger.note('split-line', line.number, line.text);
    if (pieces.length > 1 && good === 0) {
      this.#drop('glued-line', line.number, line.text);
      return false;
    }
    for (const piece of pieces) this.#takePiece(line, piece);
    return good > 0;
  }

  #drop(reason: Parameters<ReadContext['ledger']['note']>[0], line: number, text: string): void {
    this.#context.ledger.note(reason, line, text);
    this.#dropped++;
  }

  #takePiece(line: TextLine, { text, holds }: OwnPiece): void {
    if (holds.kind === 'bad') return this.#drop(holds.reason, line.number, text);
    if (holds.kind === 'status') {
      // After a start the same counters come again, and that is no repetition.
      this.#recent.length = 0;
      return this.#context.ledger.note('ready-text', line.number, text);
    }
    // A line numbered 0 is a start; the lines after it may well look like those of the start before.
    const isStart = holds.kind === 'line' && holds.line.lineNumber === 0 && (this.#last?.lineNumber ?? 0) > 0;
    if (isStart) this.#recent.length = 0;
    if (this.#isRepeated(text, holds.kind === 'line')) {
      return this.#context.ledger.note('duplicate', line.number, text);
    }
    if (holds.kind === 'line') return this.#takeLine(line, text, holds.line);
    if (holds.kind === 'pack') {
      for (const sample of packSamples(holds.records, line, this.#context)) this.#emit(sample);
      return;
    }
    const { directionDeg, speedMPerS, isValid } = holds.sentence;
    const placed = this.#untold(line);
    if (!placed) return this.#context.ledger.note('time-unknown', line.number, text);
    this.#emit(
      sampleWith({
        station: this.#context.head.station,
        atMs: placed.atMs,
        withinMs: placed.withinMs,
        headingDeg: isValid ? directionDeg : null,
        speedMPerS: isValid ? speedMPerS : null,
        stream: this.#context.head.stream,
        line: line.number,
      }),
    );
  }

  /** A line with a counter comes once; sentences and packs without one may well be equal. */
  #isRepeated(text: string, hasCounter: boolean): boolean {
    if (!hasCounter && !(text.startsWith('[') && text.includes('"bt"'))) return false;
    if (this.#recent.includes(text)) return true;
    this.#recent.push(text);
    if (this.#recent.length > RECENT_MOST) this.#recent.shift();
    return false;
  }

  /** Time of a line without a counter: the monitor's time of day, else when it came. */
  #untold(line: TextLine): { atMs: number; withinMs: number } | null {
    if (line.timeOfDayMs === null) {
      return line.arrivedMs === null ? null : { atMs: line.arrivedMs, withinMs: SENTENCE_WITHIN_MS };
    }
    const { placed } = this.#dayClock.take(line.number, {
      count: line.timeOfDayMs,
      lineNumber: null,
      arrivedMs: line.arrivedMs,
      saidStart: false,
    });
    return placed;
  }

  #takeLine(at: TextLine, text: string, line: Line): void {
    const { ledger } = this.#context;
    const clocked = this.#clock.take(at.number, {
      count: line.sinceStartMs,
      lineNumber: line.lineNumber,
      arrivedMs: at.arrivedMs,
      saidStart: false,
    });
    this.#noteTime(at, text, clocked);
    const begins = clocked.step === 'first' || clocked.step === 'restarted' || clocked.step === 'went-back';
    const last = begins ? null : this.#last;
    this.#noteGap(at.number, text, line, last, clocked.step === 'restarted');
    const speedMPerS = this.#speed(line, last, clocked);
    const minuteOf = (ms: number): number => Math.floor(ms / COUNTS_EVERY_MS);
    const isNewMinute = !last || minuteOf(last.sinceStartMs) !== minuteOf(clocked.sinceStartMs);
    this.#dropped = 0;
    this.#last = {
      lineNumber: line.lineNumber,
      sinceStartMs: clocked.sinceStartMs,
      pulses: line.cups?.pulses ?? null,
    };
    if (!clocked.placed) return ledger.note('time-unknown', at.number, text);
    if (clocked.by === 'moments') ledger.note('placed-by-moments', at.number, text);
    if (clocked.by === 'neighbours') ledger.note('placed-between', at.number, text);
    const counts = isNewMinute ? line.counts : null;
    const told = { number: at.number, placed: clocked.placed, speedMPerS, counts };
    const sample = lineSample(line, this.#context, told);
    const isGuessed = clocked.by === 'neighbours';
    this.#emit(isGuessed ? { ...sample, flags: sample.flags | sampleFlags.timeGuessed } : sample);
  }

  #noteTime({ number }: TextLine, text: string, { step, hostStepped }: Clocked): void {
    const { ledger } = this.#context;
    if (step === 'restarted') ledger.note('restart', number, text);
    if (step === 'went-back') ledger.note('time-went-back', number, text);
    if (step === 'wrapped') ledger.note('counter-wrapped', number, text);
    if (hostStepped) ledger.note('host-clock-stepped', number, text);
  }

  /** Lines that never came: those the numbers skip, less those that came and were dropped. */
  #noteGap(number: number, text: string, line: Line, last: LastLine | null, restarted: boolean): void {
    const expected = last ? last.lineNumber + 1 : restarted ? 0 : line.lineNumber;
    const skipped = (line.lineNumber - expected + COUNTER_SPAN) % COUNTER_SPAN;
    const missing = skipped - this.#dropped;
    if (missing > 0 && skipped < COUNTER_SPAN / 2) this.#context.ledger.note('gap', number, text, missing);
  }

  /** Mean wind since the line before, from the pulses counted meanwhile. [m/s] */
  #speed(line: Line, last: LastLine | null, { sinceStartMs, usualStepMs }: Clocked): number | null {
    const { cups } = this.#context.rule;
    if (!cups || !line.cups || last?.pulses === undefined || last.pulses === null) return null;
    const spanMs = sinceStartMs - last.sinceStartMs;
    if (!(spanMs > 0) || (usualStepMs !== null && spanMs > SPEED_STEPS_MOST * usualStepMs)) return null;
    const pulses = (line.cups.pulses - last.pulses + COUNTER_SPAN) % COUNTER_SPAN;
    return windOf((1000 * pulses) / spanMs, cups);
  }

  /** Instants of one source rise, so that no two of its samples share one. */
  #emit(sample: Sample): void {
    const rounded = Math.round(sample.atMs);
    const lastAtMs = this.#lastAtMs;
    const isHeld = lastAtMs !== null && rounded <= lastAtMs && lastAtMs - rounded < sample.withinMs + 1000;
    const atMs = isHeld ? lastAtMs + 1 : rounded;
    this.#lastAtMs = atMs;
    const isAbsurd = (sample.speedMPerS ?? 0) > this.#context.rule.speedMostMPerS;
    if (isAbsurd) this.#context.ledger.note('absurd-speed', sample.line, `${sample.speedMPerS} m/s`);
    const flags = sample.flags | (isAbsurd ? sampleFlags.absurdSpeed : 0);
    const withinMs = Math.ceil(sample.withinMs + Math.abs(atMs - sample.atMs));
    this.#context.emit(retimed(sample, atMs, withinMs, flags));
  }
}
