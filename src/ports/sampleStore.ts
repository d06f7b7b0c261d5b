import type { FaultColumns } from '../core/faults/index.ts';
import type { LedgerReason, LedgerRow, Sample } from '../core/record/index.ts';
import type { SampleColumns } from '../core/wind/index.ts';

/** What is stored at once. */
export interface StoreBatch {
  readonly samples: readonly Sample[];
  readonly ledger: readonly LedgerRow[];
  readonly progress: StoreProgress;
}

/** How far the raw log has been read into the store. */
export interface StoreProgress {
  /** Which raw log: several workers may fill one store, each from its own. */
  readonly log: string;
  /** Sequence number of the last raw entry whose samples are stored. [-] */
  readonly seq: number;
  /** What the reader remembers, as JSON. */
  readonly state: string;
}

/** One station as the store knows it. */
export interface StationSpan {
  readonly station: string;
  readonly samples: number;
  /** [ms UTC] */
  readonly firstMs: number;
  readonly lastMs: number;
}

/** Part of a station's samples. */
export interface SampleWindow {
  readonly station: string;
  /** Included. [ms UTC] */
  readonly fromMs: number;
  /** Not included. [ms UTC] */
  readonly untilMs: number;
}

/** A ledger row as the store gives it back. */
export interface StoredLedgerRow extends LedgerRow {
  readonly log: string;
}

/**
 * Where samples rest. Every adapter passes test/contracts/sampleStore.ts.
 *
 * Promises: `commit` is all or nothing and durable when it ends; commits may be asked for at once and happen one
 * after another; a sample of a station and instant that is there already is not stored again, and a ledger row
 * `duplicate` or `conflict` says so; a commit whose progress is not beyond that stored changes nothing; samples come
 * back oldest first, start included, end excluded; `null` stays `null`; names are data and never run.
 */
export interface SampleStore {
  /** Progress of a raw log, or `null` before its first commit. */
  progress(log: string): Promise<StoreProgress | null>;
  /** @throws `store/bad-sample` when a number is none; nothing is stored then. */
  commit(batch: StoreBatch): Promise<void>;
  stations(): Promise<StationSpan[]>;
  /** Whole samples, a batch at a time. */
  samples(window: SampleWindow): AsyncIterable<readonly Sample[]>;
  /** The same as columns for the wind arithmetic: the fast way through a year. */
  columns(window: SampleWindow): AsyncIterable<SampleColumns>;
  /** The same as columns for the fault detectors. */
  faultColumns(window: SampleWindow): AsyncIterable<FaultColumns>;
  /** Counts by reason, and rows in the order of the log. */
  ledgerCounts(): Promise<{ readonly reason: LedgerReason; readonly count: number }[]>;
  ledger(): AsyncIterable<readonly StoredLedgerRow[]>;
  /** Takes the samples of a window out and says in the ledger where they are, together or not at all. */
  moveOut(window: SampleWindow, where: string): Promise<void>;
  /** Forgets everything, so that it can be built again from the raw logs. */
  clear(): Promise<void>;
  close(): Promise<void>;
}

/** The half of a store that only looks: what screens and reports need of it. */
export type RecordReading = Pick<
  SampleStore,
  'stations' | 'samples' | 'columns' | 'faultColumns' | 'ledgerCounts'
>;
