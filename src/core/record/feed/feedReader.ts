import { Ledger, type LedgerRow } from '../ledger/ledger.ts';
import type { Line } from '../line.ts';
import { lineSample } from '../samples/lineSample.ts';
import type { ReadingRule } from '../samples/readingRule.ts';
import { retimed, type Sample } from '../samples/sample.ts';
import type { StreamHead } from '../samples/streamHead.ts';
import { NO_STREAM, StreamReader, type StreamState } from '../samples/streamReader.ts';
import type { Placed } from '../time/arrivalClock.ts';
import { messageNumbers, numberedLines, type FeedMessage } from './feedMessage.ts';
import { inSendingOrder } from './feedOrder.ts';
import { countInRun, isBeyond, placedInRun, runOf, type FeedRun } from './feedRun.ts';
import { MissingNumbers, type MissingText } from './missingNumbers.ts';

/** An earlier run of the controller and what of it did not come yet. */
interface EarlierRun {
  run: FeedRun;
  readonly missing: MissingNumbers;
}

/** Everything that is remembered of one feed between two readings, by whichever worker; plain data. */
export interface FeedState {
  readonly stream: StreamState;
  /** Lines of the run that goes on that did not come yet. */
  readonly missing: MissingText | null;
  /** Earlier runs of the controller, latest last. */
  readonly runs: readonly { readonly run: FeedRun; readonly missing: MissingText | null }[];
}

/** Nothing read yet. */
export const NO_FEED: FeedState = { stream: NO_STREAM, missing: null, runs: [] };

/** What a reading of waiting messages came to. */
export interface FeedReading {
  /** The messages in the order in which they were read, which is that of the raw log; the others wait on. */
  readonly messages: readonly FeedMessage[];
  readonly samples: readonly Sample[];
  readonly ledger: readonly LedgerRow[];
  readonly state: FeedState;
}

/** Earlier runs that late lines are still looked for in. [-] */
const RUNS_MOST = 8;

class FeedReader {
  readonly #head: StreamHead;
  readonly #rule: ReadingRule;
  readonly #reader: StreamReader;
  readonly #ledger: Ledger;
  #missing: MissingNumbers;
  #runs: EarlierRun[];
  readonly #samples: Sample[] = [];
  readonly #rows: LedgerRow[] = [];

  constructor(head: StreamHead, rule: ReadingRule, { stream, missing, runs }: FeedState) {
    this.#head = head;
    this.#rule = rule;
    this.#reader = new StreamReader(head, rule, stream);
    this.#ledger = new Ledger(head.stream);
    this.#missing = new MissingNumbers(missing);
    this.#runs = runs.map((one) => ({ run: one.run, missing: new MissingNumbers(one.missing) }));
  }

  take(message: FeedMessage): void {
    if (this.#takeLate(message)) return;
    const before = this.#run();
    const numbers = messageNumbers(message);
    this.#reader.take(message.bytes, message.arrivedMs);
    const after = this.#run();
    const goesOn = before === null || (after !== null && after.sinceStartMs >= before.sinceStartMs);
    if (!goesOn) {
      this.#runs = [...this.#runs, { run: before, missing: this.#missing }].slice(-RUNS_MOST);
      this.#missing = new MissingNumbers();
    } else if (before && numbers) this.#missing.skip(before.lineNumber, numbers.first);
    const { samples, ledger } = this.#reader.drain();
    for (const sample of samples) this.#samples.push(sample);
    for (const row of ledger) this.#rows.push(row);
  }

  #run(): FeedRun | null {
    return runOf(this.#reader.clockState);
  }

  /** Whether a message was missing from this run or an earlier one. */
  isLate({ arrivedMs, bytes }: FeedMessage): boolean {
    const current = this.#run();
    const [first] = (current && numberedLines({ bytes })) ?? [];
    return first !== undefined && this.#late(first, arrivedMs, current!) !== null;
  }

  /** Lines that come after those sent later: placed by their own counter, and nothing else learns from them. */
  #takeLate(message: FeedMessage): boolean {
    const current = this.#run();
    if (!current || !this.isLate(message)) return false;
    for (const line of numberedLines(message)!) {
      const late = this.#late(line, message.arrivedMs, current);
      // The rest of the message was read before: it is one that was sent twice.
      if (!late) this.#ledger.note('duplicate', this.#reader.skipLine(), `line ${line.lineNumber}`);
      else this.#emit(line, late.fill());
    }
    for (const row of this.#ledger.drain()) this.#rows.push(row);
    return true;
  }

  #emit(line: Line, placed: Placed): void {
    const number = this.#reader.skipLine();
    // The line after it has counted its pulses already, so it has no speed of its own.
    const told = { number, placed, speedMPerS: null, counts: null };
    const sample = lineSample(line, { head: this.#head, rule: this.#rule }, told);
    this.#samples.push(retimed(sample, Math.round(placed.atMs), placed.withinMs, sample.flags));
    this.#ledger.note('late-line', number, `line ${line.lineNumber}`);
  }

  /** The gap that a line closes, and what closing it gives; `null` for every other line. */
  #late(line: Line, arrivedMs: number, current: FeedRun): { fill(): Placed } | null {
    const here = countInRun(current, line);
    if (here !== null && !isBeyond(current, here, arrivedMs)) {
      if (line.lineNumber > current.lineNumber) return null;
      if (this.#missing.has(line.lineNumber)) {
        return { fill: () => (this.#missing.fill(line.lineNumber), placedInRun(current, here)) };
      }
    }
    for (const earlier of [...this.#runs].reverse()) {
      const there = countInRun(earlier.run, line);
      if (there === null || isBeyond(earlier.run, there, current.zeroMs)) continue;
      if (line.lineNumber > earlier.run.lineNumber || earlier.missing.has(line.lineNumber)) {
        return { fill: () => filledIn(earlier, line.lineNumber, there) };
      }
    }
    return null;
  }

  reading(messages: readonly FeedMessage[]): FeedReading {
    const state = {
      stream: this.#reader.state,
      missing: this.#missing.text,
      runs: this.#runs.map(({ run, missing }) => ({ run, missing: missing.text })),
    };
    return { messages, samples: this.#samples, ledger: this.#rows, state };
  }
}

/** A line of an earlier run that came after all: missing in the middle of it, or sent at its end. */
function filledIn(earlier: EarlierRun, lineNumber: number, sinceStartMs: number): Placed {
  const { run, missing } = earlier;
  const placed = placedInRun(run, sinceStartMs);
  if (lineNumber > run.lineNumber) {
    missing.skip(run.lineNumber, lineNumber);
    earlier.run = { ...run, lineNumber, sinceStartMs };
  } else missing.fill(lineNumber);
  return placed;
}

/**
 * Reads the messages of one station that wait, whoever took them from the broker, and gives what the next reading needs.
 *
 * @param head - Which source; all messages are of it.
 * @param rule - How it is read.
 * @param state - As the last reading gave it; `NO_FEED` at first.
 * @param waiting - Messages in any order [n ≥ 0]; everything that arrived up to `seenUntilMs` is among them. [ms UTC]
 * @returns With the messages that were read; those behind a gap that may still close are read the next time.
 * @check src/core/record/feed/feedReader.test.ts
 */
export function readFeed(
  head: StreamHead,
  rule: ReadingRule,
  state: FeedState,
  waiting: { readonly messages: readonly FeedMessage[]; readonly seenUntilMs: number },
): FeedReading {
  const reader = new FeedReader(head, rule, state);
  const ordered = inSendingOrder(waiting.messages, {
    lastNumber: state.stream.own.clock.counter.lineNumber,
    seenUntilMs: waiting.seenUntilMs,
    isLate: (message) => reader.isLate(message),
  });
  for (const message of ordered) reader.take(message);
  return reader.reading(ordered);
}

/**
 * The same for messages whose order is known, as from the raw log: it gives the same samples at the same times.
 *
 * @param head - Which source. [-]
 * @param rule - How it is read.
 * @param state - As the last reading gave it.
 * @param messages - In the order in which they were read before. n ≥ 0
 * @check src/core/record/feed/feedReader.test.ts
 */
export function rereadFeed(
  head: StreamHead,
  rule: ReadingRule,
  state: FeedState,
  messages: readonly FeedMessage[],
): FeedReading {
  const reader = new FeedReader(head, rule, state);
  for (const message of messages) reader.take(message);
  return reader.reading(messages);
}
