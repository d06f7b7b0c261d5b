import { VanewrightError } from '../../error/index.ts';
import type { LedgerRow } from '../ledger/ledger.ts';
import type { RawEntry } from '../rawLog/rawEntry.ts';
import type { SegmentSpan } from '../time/placeSegments.ts';
import type { ReadingRule } from './readingRule.ts';
import type { Sample } from './sample.ts';
import { stationName } from './stationName.ts';
import type { StreamHead } from './streamHead.ts';
import { NO_STREAM, StreamReader, type StreamState } from './streamReader.ts';

/** What the first entry of a source says about it, as its payload. */
export interface StreamBegin {
  readonly station: string;
  readonly source: StreamHead['source'];
  readonly name: string;
  /** Choices that were made when the source came. */
  readonly rule?: Partial<ReadingRule>;
}

/** Everything a `RecordReader` remembers: the sources that have not ended. */
export interface RecordState {
  /** Sequence number of the last entry that was read. [-] */
  readonly seq: number;
  readonly open: readonly {
    readonly begin: StreamBegin;
    readonly stream: number;
    readonly state: StreamState;
  }[];
}

/** Nothing read yet. */
export const NOTHING_RECORDED: RecordState = { seq: 0, open: [] };

const asciiBytes = (text: string): Uint8Array => Uint8Array.from(text, (char) => char.charCodeAt(0));

/** Payload of the entry that begins a source; every character beyond ASCII is escaped. */
export function beginPayload(begin: StreamBegin): Uint8Array {
  const json = JSON.stringify({ ...begin, station: stationName(begin.station) });
  return asciiBytes(
    json.replace(/[^\x20-\x7e]/g, (c) => `\\u${c.charCodeAt(0).toString(16).padStart(4, '0')}`),
  );
}

function beginOf({ payload, seq }: RawEntry): StreamBegin {
  try {
    return JSON.parse(Array.from(payload, (byte) => String.fromCharCode(byte)).join('')) as StreamBegin;
  } catch {
    throw new VanewrightError({
      code: 'record/raw-entry',
      what: 'An entry of the raw log cannot be read, although its check value is right.',
      where: `raw entry ${seq}`,
      got: `${payload.length} bytes`,
      allowed: 'the name of a source as JSON',
      fix: 'Use the vanewright version that wrote this log.',
    });
  }
}

/** Reads a raw log, or any part of one that follows what was read: samples and ledger of every source in it. */
export class RecordReader {
  readonly #ruleFor: (begin: StreamBegin, stream: number) => ReadingRule;
  readonly #open = new Map<number, { begin: StreamBegin; reader: StreamReader }>();
  #seq: number;
  #spans: SegmentSpan[] = [];
  #ended: { samples: Sample[]; ledger: LedgerRow[] }[] = [];

  /**
   * @param ruleFor - How a source is read; another one gives another reading of the same bytes.
   * @param state - As `state` gave it, to go on from there.
   */
  constructor(
    ruleFor: (begin: StreamBegin, stream: number) => ReadingRule,
    state: RecordState = NOTHING_RECORDED,
  ) {
    this.#ruleFor = ruleFor;
    this.#seq = state.seq;
    for (const { begin, stream, state: streamState } of state.open) this.#begin(begin, stream, streamState);
  }

  get state(): RecordState {
    return {
      seq: this.#seq,
      open: [...this.#open].map(([stream, { begin, reader }]) => ({ begin, stream, state: reader.state })),
    };
  }

  /** Sequence number of the last entry that was read. [-] */
  get seq(): number {
    return this.#seq;
  }

  #begin(begin: StreamBegin, stream: number, state: StreamState): void {
    const { station, source, name } = begin;
    const rule = this.#ruleFor(begin, stream);
    this.#open.set(stream, {
      begin,
      reader: new StreamReader({ stream, station, source, name }, rule, state),
    });
  }

  /** The next entry; one that was read already is passed over. */
  take(entry: RawEntry): void {
    if (entry.seq <= this.#seq) return;
    this.#seq = entry.seq;
    if (entry.kind === 'begin') return this.#begin(beginOf(entry), entry.seq, NO_STREAM);
    const open = this.#open.get(entry.stream);
    if (!open) return;
    if (entry.kind === 'bytes') return open.reader.take(entry.payload, entry.arrivedMs);
    open.reader.end();
    this.#spans.push(...open.reader.drainSpans());
    this.#ended.push(open.reader.drain());
    this.#open.delete(entry.stream);
  }

  /** Samples and ledger rows since the last call, by source. */
  drain(): { readonly samples: Sample[]; readonly ledger: LedgerRow[] } {
    const parts = [...this.#ended, ...[...this.#open.values()].map(({ reader }) => reader.drain())];
    this.#ended = [];
    if (parts.length === 1) return parts[0]!;
    return {
      samples: parts.flatMap(({ samples }) => samples),
      ledger: parts.flatMap(({ ledger }) => ledger),
    };
  }

  /** Runs of controllers, those that go on included: what moments can be given for. */
  spans(): SegmentSpan[] {
    for (const { reader } of this.#open.values()) this.#spans.push(...reader.drainSpans());
    return this.#spans;
  }
}
