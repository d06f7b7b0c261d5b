import { Ledger, type LedgerRow } from '../ledger/ledger.ts';
import { LineSplitter, NOTHING_SPLIT, type ByteLine, type SplitterState } from '../mess/byteLines.ts';
import { lineText, withoutMonitorTime } from '../mess/lineText.ts';
import { tableLayout, type TableLayout } from '../mess/tableLayout.ts';
import type { SegmentSpan } from '../time/placeSegments.ts';
import type { SegmentClockState } from '../time/segmentClock.ts';
import { beginsAsOwn, ownPieces } from './ownLine.ts';
import { NOTHING_READ, OwnReader, type OwnReaderState } from './ownReader.ts';
import type { ReadContext, TextLine } from './readContext.ts';
import type { ReadingRule } from './readingRule.ts';
import type { Sample } from './sample.ts';
import type { StreamHead } from './streamHead.ts';
import { TableReader, type TableReaderState } from './tableReader.ts';

/** Everything a `StreamReader` remembers; plain data, so that it can be stored. */
export interface StreamState {
  readonly splitter: SplitterState;
  readonly own: OwnReaderState;
  readonly table: TableReaderState | null;
  /** What the lines are; `open` until enough have come. */
  readonly form: 'open' | 'own' | 'table' | 'none';
  /** Lines kept until the form is known. */
  readonly held: readonly TextLine[];
  /** Lines in all, and those that could be read. [-] */
  readonly lines: number;
  readonly good: number;
  /** When the last bytes came: an unended last line came then. [ms UTC] */
  readonly arrivedMs: number | null;
}

/** Nothing read yet. */
export const NO_STREAM: StreamState = {
  splitter: NOTHING_SPLIT,
  own: NOTHING_READ,
  table: null,
  form: 'open',
  held: [],
  lines: 0,
  good: 0,
  arrivedMs: null,
};

/** Lines looked at before the columns of a log are decided. [-] */
const HELD_MOST = 400;
/** Held lines never take more than this. [character] */
const HELD_CHARS_MOST = 131_072;
/** Fewer good lines than this: most likely the serial speed is wrong. [-] */
const WRONG_SPEED_SHARE = 0.2;
const WRONG_SPEED_LINES = 50;

/** Reads one source from its bytes: what its lines are, then samples and repair ledger. */
export class StreamReader {
  readonly #context: ReadContext;
  readonly #splitter: LineSplitter;
  readonly #own: OwnReader;
  #table: TableReader | null;
  #form: StreamState['form'];
  #held: TextLine[];
  #heldChars: number;
  #lines: number;
  #good: number;
  #arrivedMs: number | null;
  #samples: Sample[] = [];

  /**
   * @param head - Which source.
   * @param rule - How it is read.
   * @param state - As `state` gave it, to go on from there with the same rule.
   */
  constructor(head: StreamHead, rule: ReadingRule, state: StreamState = NO_STREAM) {
    this.#context = {
      head,
      rule,
      ledger: new Ledger(head.stream),
      emit: (sample) => {
        this.#samples.push(sample);
        if (this.#form === 'table') this.#good++;
      },
    };
    this.#splitter = new LineSplitter(state.splitter);
    this.#own = new OwnReader(this.#context, state.own);
    this.#table = state.table && new TableReader(this.#context, state.table);
    this.#form = state.form;
    this.#held = [...state.held];
    this.#heldChars = this.#held.reduce((sum, { text }) => sum + text.length, 0);
    this.#lines = state.lines;
    this.#good = state.good;
    this.#arrivedMs = state.arrivedMs;
  }

  get state(): StreamState {
    return {
      splitter: this.#splitter.state,
      own: this.#own.state,
      table: this.#table?.state ?? null,
      form: this.#form,
      held: this.#held,
      lines: this.#lines,
      good: this.#good,
      arrivedMs: this.#arrivedMs,
    };
  }

  /** The rule that this reader reads by. */
  get rule(): ReadingRule {
    return this.#context.rule;
  }

  /** What is known of the counter of numbered lines. */
  get clockState(): SegmentClockState {
    return this.#own.state.clock;
  }

  /** Counts a line that is read elsewhere; gives back its number. [-] */
  skipLine(): number {
    this.#lines++;
    this.#good++;
    return this.#splitter.skip();
  }

  /**
   * The next bytes of the source.
   *
   * @param bytes - Of any length. [byte]
   * @param arrivedMs - When they came; `null` for an old file. [ms UTC]
   */
  take(bytes: Uint8Array, arrivedMs: number | null): void {
    this.#arrivedMs = arrivedMs;
    for (const line of this.#splitter.take(bytes)) this.#line(line, arrivedMs);
    this.#endEntry();
  }

  /** Ends the source: its last line is complete and what was held is decided. */
  end(): void {
    for (const line of this.#splitter.end()) this.#line(line, this.#arrivedMs);
    if (this.#form === 'open') this.#decide();
    this.#own.end();
    this.#table?.end();
    const { ledger } = this.#context;
    if (this.#lines >= WRONG_SPEED_LINES && this.#good < WRONG_SPEED_SHARE * this.#lines) {
      ledger.note('wrong-speed', 0, `${this.#good} of ${this.#lines} lines`);
    }
    this.#endEntry();
  }

  /** Samples and ledger rows since the last call. */
  drain(): { readonly samples: Sample[]; readonly ledger: LedgerRow[] } {
    const samples = this.#samples;
    this.#samples = [];
    return { samples, ledger: this.#context.ledger.drain() };
  }

  /** Runs of the controller that have ended since the last call. */
  drainSpans(): SegmentSpan[] {
    return [...this.#own.drainSpans(), ...(this.#table?.drainSpans() ?? [])];
  }

  #endEntry(): void {
    for (const { kind, line, count } of this.#splitter.notes()) {
      this.#context.ledger.note(kind, line, `${count}`, count);
    }
    this.#context.ledger.endEntry();
  }

  #line({ number, bytes }: ByteLine, arrivedMs: number | null): void {
    const { ledger } = this.#context;
    const { text: whole, isForeign } = lineText(bytes);
    const { text, timeOfDayMs } = withoutMonitorTime(whole);
    if (text.trim() === '') return;
    this.#lines++;
    if (timeOfDayMs !== null) ledger.note('monitor-times', number, whole);
    // Bytes that are no UTF-8 are letters of an old alphabet at best and rubbish at worst.
    if (isForeign) ledger.note('not-utf8', number, whole);
    const line = { number, text, arrivedMs, timeOfDayMs };
    if (this.#form === 'own' || this.#form === 'none') return this.#takeOwn(line);
    if (this.#form === 'table') return this.#table!.take(line);
    this.#held.push(line);
    this.#heldChars += text.length;
    if (beginsAsOwn(text) && ownPieces(text).some(({ holds }) => holds.kind !== 'bad'))
      return this.#settle('own');
    if (this.#held.length >= HELD_MOST || this.#heldChars > HELD_CHARS_MOST) this.#decide();
  }

  #takeOwn(line: TextLine): void {
    if (this.#own.take(line)) this.#good++;
  }

  /** No line said itself what it is: columns, or nothing that can be read. */
  #decide(): void {
    if (this.#held.length === 0) return;
    const layout = tableLayout(
      this.#held.map(({ text }) => text),
      this.#context.rule,
    );
    if (!layout) return this.#settle('none');
    this.#noteLayout(layout);
    this.#table = new TableReader(this.#context, TableReader.begin(layout));
    this.#settle('table');
  }

  #settle(form: 'own' | 'table' | 'none'): void {
    const held = this.#held;
    this.#form = form;
    this.#held = [];
    this.#heldChars = 0;
    for (const line of held) {
      if (form === 'table') this.#table!.take(line);
      else this.#takeOwn(line);
    }
  }

  #noteLayout({ guesses, names, roles, headingAs }: TableLayout): void {
    const { ledger, rule } = this.#context;
    const shown = names.map((name, c) => `${name}: ${roles[c]}`).join(', ');
    for (const guess of guesses) ledger.note(guess, 0, shown);
    const others = names.filter((_, c) => roles[c] === 'other');
    if (others.length > 0) ledger.note('left-out-columns', 0, others.join(', '), others.length);
    if (headingAs === 'names') ledger.note('compass-names', 0, shown);
    const isLocal = roles.some((role) => role === 'instant' || role === 'date');
    if (isLocal && rule.zone !== 'UTC') ledger.note('local-time', 0, rule.zone);
    if (rule.startLabelledMs > 0) ledger.note('label-moved', 0, `${rule.startLabelledMs} ms`);
  }
}
