import type { LedgerReason } from '../ledger/ledgerReasons.ts';
import { separators } from '../mess/fieldValue.ts';
import { isHeadingLine, tableLayout, type TableLayout } from '../mess/tableLayout.ts';
import { COUNTER_SPAN } from '../time/counterUnwrap.ts';
import type { SegmentSpan } from '../time/placeSegments.ts';
import { NO_SEGMENT, SegmentClock, type SegmentClockState } from '../time/segmentClock.ts';
import { ZoneClock } from '../time/zoneClock.ts';
import type { ReadContext, TextLine } from './readContext.ts';
import { sampleFlags, sampleWith } from './sample.ts';
import { rowTime, type RowTime } from './tableTime.ts';
import { rowValues } from './tableValues.ts';
import { unglued } from './unglued.ts';

/** Everything a `TableReader` remembers. */
export interface TableReaderState {
  readonly layout: TableLayout;
  readonly clock: SegmentClockState;
  readonly beforeMs: number | null;
  /** Usual time between two rows. [ms] */
  readonly stepMs: number | null;
  /** Latest rows by their instant, to know a row that comes again. */
  readonly recent: readonly (readonly [number, string])[];
  readonly saidStart: boolean;
  /** Rows dropped since the last good one: they explain a gap. [-] */
  readonly dropped: number;
}

/** Rows sent again come at most this many rows later. [-] */
const RECENT_MOST = 128;
const SECOND_MS = 1000;
/** Steps up to this are those of a clock that shows whole seconds. [s] */
const MOST_STEP_OF_SECONDS = 1.5;
/** A row that comes this many usual steps late has others missing before it. [-] */
const GAP_STEPS = 1.5;

/** Reads the rows of a log of separated columns. */
export class TableReader {
  readonly #context: ReadContext;
  readonly #zone: ZoneClock;
  readonly #clock: SegmentClock;
  #layout: TableLayout;
  #beforeMs: number | null;
  #stepMs: number | null;
  #recent: Map<number, string>;
  #saidStart: boolean;
  #dropped: number;

  constructor(context: ReadContext, state: TableReaderState) {
    this.#context = context;
    const { head, rule } = context;
    this.#zone = new ZoneClock(rule.zone);
    this.#layout = state.layout;
    this.#clock = new SegmentClock(head.stream, rule.placements, counterRuleOf(state.layout), state.clock);
    this.#beforeMs = state.beforeMs;
    this.#stepMs = state.stepMs;
    this.#recent = new Map(state.recent);
    this.#saidStart = state.saidStart;
    this.#dropped = state.dropped;
  }

  /** State of a reader that begins with a layout. */
  static begin(layout: TableLayout): TableReaderState {
    return {
      layout,
      clock: NO_SEGMENT,
      beforeMs: null,
      stepMs: null,
      recent: [],
      saidStart: false,
      dropped: 0,
    };
  }

  get state(): TableReaderState {
    return {
      layout: this.#layout,
      clock: this.#clock.state,
      beforeMs: this.#beforeMs,
      stepMs: this.#stepMs,
      recent: [...this.#recent],
      saidStart: this.#saidStart,
      dropped: this.#dropped,
    };
  }

  drainSpans(): SegmentSpan[] {
    return this.#clock.drainSpans();
  }

  end(): void {
    this.#clock.end();
  }

  /** One line of the log. */
  take(line: TextLine): void {
    const { separator, width } = this.#layout;
    const fields = separators[separator](line.text);
    // A header may use another sign than the rows before it, so every one is tried.
    if (isHeadingLine(fields, fields.length) && fields.length > 1) return this.#heading(line, fields);
    if (fields.length === width) return this.#row(line, fields);
    if (RUBBISH.test(line.text)) return this.#drop('rubbish', line, 0);
    if (isWords(line.text)) {
      this.#saidStart = true;
      return this.#drop('ready-text', line, 0);
    }
    if (fields.length < width) return this.#drop('cut-line', line);
    const apart = unglued(fields, this.#layout, this.#zone, this.#beforeMs, this.#stepMs);
    if (apart) {
      this.#context.ledger.note('split-line', line.number, line.text);
      for (const row of apart) this.#row(line, row);
      return;
    }
    if (fields.length === width + 1) return this.#drop('extra-value', line);
    this.#drop('glued-line', line, 2);
  }

  /** @param rows - Rows that are lost with it. [-] */
  #drop(reason: LedgerReason, line: TextLine, rows = 1): void {
    this.#dropped += rows;
    this.#context.ledger.note(reason, line.number, line.text);
  }

  #heading(line: TextLine, names: readonly string[]): void {
    const { ledger, rule } = this.#context;
    ledger.note('heading-line', line.number, line.text);
    if (names.join() === this.#layout.names.join()) {
      this.#saidStart = this.#beforeMs !== null || this.#clock.usualStepMs !== null;
      return;
    }
    // Other columns: known only once a row of them has come, so names alone decide, with what was told before.
    const rows = [names, names.map((_, c) => exampleOf(this.#layout, names, c))];
    const text = rows.map((row) => row.join(signOf(this.#layout))).join('\n');
    const layout = tableLayout(text.split('\n'), { ...rule, decimalComma: this.#layout.decimalComma });
    if (!layout) return;
    ledger.note('columns-changed', line.number, line.text);
    this.#layout = { ...layout, dateOrder: this.#layout.dateOrder, headingAs: layout.headingAs };
  }

  #row(line: TextLine, fields: readonly string[]): void {
    const { ledger, rule, head } = this.#context;
    const layout = this.#layout;
    if (RUBBISH.test(line.text)) return this.#drop('rubbish', line, 0);
    const time = rowTime(fields, layout, this.#zone, this.#beforeMs);
    if (time === null) return this.#drop(badTime(fields, layout), line);
    const values = rowValues(fields, layout, rule.channels, rule.speedMostMPerS);
    if ('dropped' in values) return this.#drop(values.dropped, line);
    const placed = this.#placed(line, time);
    if (!placed) return;
    const { withinMs, isGuessed } = placed;
    const shown = JSON.stringify([
      values.headingDeg,
      values.speedMPerS,
      values.gustMPerS,
      values.pulses,
      values.word,
    ]);
    const atMs = placed.isWhole ? this.#withinSecond(line, placed.atMs, shown) : placed.atMs;
    if (atMs === null || (atMs === placed.atMs && this.#isKnown(line, atMs, shown))) return;
    for (const note of values.notes) ledger.note(note, line.number, line.text);
    const isAbsurd = values.notes.includes('absurd-speed');
    const { headingDeg, speedMPerS, gustMPerS, pulses, word } = values;
    const sample = sampleWith({
      station: head.station,
      atMs,
      withinMs,
      headingDeg,
      halfWidthDeg: layout.headingAs === 'positions' && headingDeg !== null ? layout.positionDeg / 2 : null,
      speedMPerS,
      gustMPerS,
      pulses,
      word,
      flags:
        (isAbsurd ? sampleFlags.absurdSpeed : 0) |
        (isGuessed ? sampleFlags.timeGuessed : 0) |
        (layout.guesses.length > 0 ? sampleFlags.layoutGuessed : 0),
      stream: head.stream,
      line: line.number,
    });
    this.#context.emit(sample);
  }

  /** The instant of a row, or `null` when nothing tells it; what was done to find it is noted. */
  #placed(line: TextLine, time: NonNullable<RowTime>) {
    const { ledger, rule } = this.#context;
    if ('atMs' in time) {
      if (time.note) ledger.note(time.note, line.number, line.text);
      const atMs = Math.round(time.atMs + rule.startLabelledMs);
      if (this.#saidStart) ledger.note('restart', line.number, line.text);
      this.#saidStart = false;
      return {
        atMs,
        withinMs: time.withinMs,
        isWhole: atMs % SECOND_MS === 0 && time.withinMs >= SECOND_MS / 2,
        isGuessed: false,
      };
    }
    const isUnset = 'unset' in time;
    if (isUnset) ledger.note('clock-not-set', line.number, line.text);
    const { step, placed, by, hostStepped } = this.#clock.take(line.number, {
      count: isUnset ? time.unset : time.count,
      lineNumber: null,
      arrivedMs: line.arrivedMs,
      saidStart: this.#saidStart,
    });
    this.#saidStart = false;
    if (step === 'restarted') ledger.note('restart', line.number, line.text);
    if (step === 'went-back') ledger.note('time-went-back', line.number, line.text);
    if (step === 'wrapped') ledger.note('counter-wrapped', line.number, line.text);
    if (hostStepped) ledger.note('host-clock-stepped', line.number, line.text);
    if (!placed) {
      ledger.note('time-unknown', line.number, line.text);
      return null;
    }
    if (by === 'moments') ledger.note('placed-by-moments', line.number, line.text);
    if (by === 'neighbours') ledger.note('placed-between', line.number, line.text);
    return {
      atMs: Math.round(placed.atMs),
      withinMs: Math.ceil(placed.withinMs),
      isWhole: false,
      isGuessed: by === 'neighbours',
    };
  }

  /**
   * Place of a row among others of the same second.
   *
   * A clock that shows whole seconds says no more, so several rows a second are told apart by their order, a millisecond
   * each. In a record of longer steps two rows of one time are a question, not a pair.
   *
   * @returns `null` for a row that is there already. [ms UTC]
   */
  #withinSecond({ number, text }: TextLine, atMs: number, shown: string): number | null {
    const { ledger } = this.#context;
    const [before, step] = [this.#beforeMs, this.#stepMs];
    if (before === null || before < atMs || before >= atMs + SECOND_MS - 1) return atMs;
    if (step !== null && step > MOST_STEP_OF_SECONDS * SECOND_MS) return atMs;
    for (let at = atMs; at <= before; at++) {
      if (this.#recent.get(at) !== shown) continue;
      ledger.note('duplicate', number, text);
      return null;
    }
    ledger.note('same-second', number, text);
    this.#recent.set(before + 1, shown);
    this.#beforeMs = before + 1;
    return before + 1;
  }

  /** Whether a row of this instant came lately; also keeps the usual step and notes gaps. */
  #isKnown(line: TextLine, atMs: number, shown: string): boolean {
    const { ledger } = this.#context;
    const known = this.#recent.get(atMs);
    if (known !== undefined) {
      ledger.note(known === shown ? 'duplicate' : 'conflict', line.number, line.text);
      return true;
    }
    this.#recent.set(atMs, shown);
    if (this.#recent.size > RECENT_MOST) this.#recent.delete(this.#recent.keys().next().value!);
    const before = this.#beforeMs;
    const dropped = this.#dropped;
    this.#beforeMs = atMs;
    this.#dropped = 0;
    if (before === null) return false;
    const step = atMs - before;
    if (step < 0) {
      ledger.note('time-went-back', line.number, line.text);
      return false;
    }
    if (this.#stepMs !== null && step > GAP_STEPS * this.#stepMs) {
      const missing = Math.round(step / this.#stepMs) - 1 - dropped;
      if (missing > 0) ledger.note('gap', line.number, line.text, missing);
      return false;
    }
    this.#stepMs = this.#stepMs === null ? step : Math.min(this.#stepMs * 1.01, step);
    return false;
  }
}

/** Characters that no text has. */

const RUBBISH = /[\x00-\x08\x0e-\x1f\x7f-\x9f\ufffd]/;

/** Words of a program, and no numbers to speak of. */
function isWords(text: string): boolean {
  return /[A-Za-z]{3,}/.test(text) && (text.match(/\d+/g) ?? []).length <= 1 && !/^[\d;,.\t| ]+$/.test(text);
}

function badTime(fields: readonly string[], { roles }: TableLayout): LedgerReason {
  const at = roles.findIndex((role) => role !== 'other' && role !== 'heading' && role !== 'speed');
  return fields[at] === '' ? 'missing-value' : 'bad-value';
}

function signOf({ separator }: TableLayout): string {
  return { semicolon: ';', tab: '\t', comma: ',', bar: '|', blank: ' ', pairs: ',' }[separator];
}

/** A field of a made-up row that shows what a column of that name holds. */
function exampleOf(layout: TableLayout, names: readonly string[], c: number): string {
  const at = layout.names.indexOf(names[c]!);
  if (at < 0) return '1';
  const role = layout.roles[at]!;
  if (role === 'instant') return '2026-01-02T03:04:05Z';
  if (role === 'date') return '2026-01-02';
  if (role === 'time-of-day') return '03:04:05';
  if (role === 'unix-s') return '1700000000';
  if (role === 'unix-ms') return '1700000000000';
  if (role === 'heading' && layout.headingAs === 'names') return 'N';
  return '100';
}

function counterRuleOf({ roles }: TableLayout) {
  const msPerCount = roles.includes('counter-us') ? 0.001 : roles.includes('counter-s') ? 1000 : 1;
  // Seconds are printed from a counter of milliseconds, which ends where that does.
  const span = msPerCount === 1000 ? COUNTER_SPAN / 1000 : COUNTER_SPAN;
  return {
    msPerCount,
    span: roles.some((role) => role.startsWith('counter')) ? span : Number.MAX_SAFE_INTEGER,
  };
}
