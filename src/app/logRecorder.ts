import {
  beginPayload,
  PAYLOAD_MOST,
  RecordReader,
  type LedgerRow,
  type NewRawEntry,
  type RawEntry,
  type ReadingRule,
  type RecordState,
  type Sample,
  type StreamBegin,
} from '../core/record/index.ts';
import type { Clock, RawLog, SampleStore, SourceBytes } from '../ports/index.ts';
import { chosenRule, placementsOf, type ReadingChoices } from './logChoices.ts';

/** What a recorder works with. */
export interface RecorderParts {
  readonly log: RawLog;
  readonly store: SampleStore;
  readonly clock: Clock;
  /** The instrument's way of reading. */
  readonly rule: ReadingRule;
  readonly choices: ReadingChoices;
  /** Hears of samples as they come, before they are stored. */
  readonly onSamples?: (samples: readonly Sample[]) => void;
  /** Hears that the store cannot be written; the raw log goes on, and the store catches up later. */
  readonly onStoreLost?: (error: unknown) => void;
}

/** Batches are stored at least this often. [ms] */
export const COMMIT_EVERY_MS = 1000;
/** Samples that wait for the store: past this, sources wait too. [-] */
const WAITING_MOST = 50_000;
/** Entries of the raw log are read again at most this many samples at a time. [-] */
const CATCH_UP_SAMPLES = 100_000;
/** A store that was lost is tried again after this. [ms] */
const RETRY_MS = 1000;

/**
 * Takes bytes of sources: to the raw log first, which is when they are acknowledged, then as samples to the store.
 *
 * The store may be behind the raw log at any moment and even be lost: it is always filled up from the raw log, by a
 * reader that goes on from the state stored with the last batch.
 */
export class Recorder {
  readonly #parts: RecorderParts;
  #reader: RecordReader;
  readonly #streams = new Map<string, number>();
  #samples: Sample[] = [];
  #ledger: LedgerRow[] = [];
  #committing: Promise<void> = Promise.resolve();
  #callOff: (() => void) | null = null;
  /** The store has not got what the reader has read: it must be filled from the raw log. */
  #isBehind = false;
  #stored = 0;

  constructor(parts: RecorderParts) {
    this.#parts = parts;
    this.#reader = this.#readerFrom(undefined, []);
  }

  /** Samples handed to the store since the start. [-] */
  get stored(): number {
    return this.#stored;
  }

  #readerFrom(state: RecordState | undefined, placements: ReturnType<typeof placementsOf>): RecordReader {
    const { rule, choices } = this.#parts;
    return new RecordReader((begin: StreamBegin) => chosenRule(rule, begin.rule, choices, placements), state);
  }

  /** Fills the store from the raw log, ends sources that a crash left open, and is then ready for more. */
  async start(): Promise<void> {
    await this.#catchUp();
    const open = this.#reader.state.open.map(({ stream }) => stream);
    if (open.length > 0)
      await this.#append(
        open.map((stream) => ({ kind: 'end', stream, arrivedMs: null, payload: new Uint8Array(0) })),
      );
    for (const damage of this.#parts.log.damage) {
      const { at, bytes, segment, looks } = damage;
      const got = `${segment} at byte ${at}: ${looks}`;
      this.#ledger.push({ stream: 0, reason: 'raw-damaged', fromLine: 0, toLine: 0, count: bytes, got });
    }
    if (this.#parts.log.damage.length > 0) await this.#append([marker()]);
    await this.flush();
  }

  /** Reads what the store has not got. */
  async #catchUp(): Promise<void> {
    const { log, store, choices } = this.#parts;
    const progress = await store.progress(log.name);
    const state = progress ? (JSON.parse(progress.state) as RecordState) : undefined;
    const placements = (choices.moments?.length ?? 0) > 0 ? await this.#survey() : [];
    this.#reader = this.#readerFrom(state, placements);
    this.#samples = [];
    this.#ledger = [];
    for await (const entries of log.read(this.#reader.seq)) {
      for (const entry of entries) {
        this.#read(entry);
        if (this.#samples.length >= CATCH_UP_SAMPLES) await this.#commit();
      }
    }
    await this.#commit();
    this.#isBehind = false;
  }

  /** A first look at all runs, to place those without a clock. */
  async #survey() {
    const { log, choices } = this.#parts;
    const reader = this.#readerFrom(undefined, []);
    for await (const entries of log.read(0)) {
      for (const entry of entries) reader.take(entry);
      reader.drain();
    }
    return placementsOf(reader.spans(), choices);
  }

  #read(entry: RawEntry): void {
    this.#reader.take(entry);
    const { samples, ledger } = this.#reader.drain();
    for (const sample of samples) this.#samples.push(sample);
    for (const row of ledger) this.#ledger.push(row);
    if (samples.length > 0) this.#parts.onSamples?.(samples);
  }

  /**
   * Bytes of a source; ends once they are in the raw log.
   *
   * @throws `log/disk-full`, `log/not-writable`; the bytes may be given again.
   */
  async take({ begin, bytes, arrivedMs, isEnd }: SourceBytes): Promise<void> {
    const stream = this.#streams.get(keyOf(begin)) ?? (await this.#begin(begin));
    const entries: NewRawEntry[] = [];
    for (let from = 0; from < bytes.length; from += PAYLOAD_MOST) {
      entries.push({ kind: 'bytes', stream, arrivedMs, payload: bytes.subarray(from, from + PAYLOAD_MOST) });
    }
    if (isEnd) entries.push({ kind: 'end', stream, arrivedMs, payload: new Uint8Array(0) });
    if (entries.length > 0) await this.#append(entries);
    if (isEnd) this.#streams.delete(keyOf(begin));
    if (this.#samples.length >= WAITING_MOST) await this.flush();
    else this.#flushAfter(COMMIT_EVERY_MS);
  }

  async #begin(begin: StreamBegin): Promise<number> {
    const [stream] = await this.#append([
      { kind: 'begin', stream: 0, arrivedMs: null, payload: beginPayload(begin) },
    ]);
    this.#streams.set(keyOf(begin), stream!);
    return stream!;
  }

  /** Sequence numbers of entries, now safe on the disk and read. */
  async #append(entries: readonly NewRawEntry[]): Promise<number[]> {
    const first = await this.#parts.log.append(entries);
    for (const [i, entry] of entries.entries()) {
      const seq = first + i;
      // An entry that came while the raw log was read again is not lost: it is read once more.
      if (seq > this.#reader.seq + 1) this.#isBehind = true;
      // While the store is behind, the raw log keeps everything and memory nothing.
      if (!this.#isBehind) this.#read({ ...entry, seq, stream: entry.kind === 'begin' ? seq : entry.stream });
    }
    return entries.map((_, i) => first + i);
  }

  #flushAfter(delayMs: number): void {
    this.#callOff ??= this.#parts.clock.after(delayMs, () => {
      this.#callOff = null;
      void this.flush();
    });
  }

  /** Ends once everything read so far is stored, or the store is known to be lost. */
  async flush(): Promise<void> {
    this.#committing = this.#committing.then(() => this.#settle());
    await this.#committing;
  }

  async #settle(): Promise<void> {
    try {
      if (this.#isBehind) await this.#catchUp();
      else await this.#commit();
    } catch (error) {
      if (!this.#isBehind) this.#parts.onStoreLost?.(error);
      this.#isBehind = true;
      this.#samples = [];
      this.#ledger = [];
      this.#flushAfter(RETRY_MS);
    }
  }

  async #commit(): Promise<void> {
    const { state } = this.#reader;
    const [samples, ledger] = [this.#samples, this.#ledger];
    if (state.seq === 0) return;
    this.#samples = [];
    this.#ledger = [];
    const { log, store } = this.#parts;
    await store.commit({
      samples,
      ledger,
      progress: { log: log.name, seq: state.seq, state: JSON.stringify(state) },
    });
    this.#stored += samples.length;
  }

  /** Forgets what is stored and reads the raw log from its beginning. */
  async rebuild(): Promise<void> {
    await this.#parts.store.clear();
    await this.#catchUp();
  }

  /** Stores what is left; sources that go on are ended by the next start. */
  async close(): Promise<void> {
    await this.flush();
    this.#callOff?.();
    this.#callOff = null;
  }
}

const keyOf = ({ source, name, station }: StreamBegin): string => JSON.stringify([source, name, station]);

/** An entry that says nothing, so that ledger rows of the log itself have a place of their own. */
function marker(): NewRawEntry {
  return { kind: 'end', stream: 0, arrivedMs: null, payload: new Uint8Array(0) };
}
