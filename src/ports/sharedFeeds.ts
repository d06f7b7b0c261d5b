import type { FeedMessage, LedgerRow, Sample } from '../core/record/index.ts';

/** A message that a worker took from the broker and that is not acknowledged yet. */
export interface TakenMessage {
  readonly topic: string;
  readonly station: string;
  /** The worker's connection, by which its messages keep their order. */
  readonly worker: string;
  /** [ms UTC] */
  readonly arrivedMs: number;
  readonly bytes: Uint8Array;
  /** The broker sent it before, and did not hear that it was kept. */
  readonly isAgain: boolean;
}

/** One topic whose messages are to be read now, by nobody else meanwhile. */
export interface ClaimedFeed {
  readonly topic: string;
  readonly station: string;
  /** Its number as the source of samples: below 0, since those of raw logs are above. [-] */
  readonly stream: number;
  /** What the last reading left, by whichever worker; `null` before the first. */
  readonly state: string | null;
  readonly messages: readonly FeedMessage[];
  /** Everything that arrived up to here is among the messages. [ms UTC] */
  readonly seenUntilMs: number;
}

/** What a reading of a claimed feed came to. */
export interface FeedRead {
  /** Those that were read, in that order; the others wait on. */
  readonly messages: readonly FeedMessage[];
  readonly samples: readonly Sample[];
  readonly ledger: readonly LedgerRow[];
  readonly state: string;
}

/**
 * Messages of many stations, taken and read by any number of workers that keep nothing themselves.
 *
 * Promises: `keep` ends only once the messages are safe; a message that is kept is read once, by one worker, whichever
 * dies meanwhile; samples, ledger, state and the message itself move together or not at all; the messages that were
 * read are kept as they came, in the order of reading.
 */
export interface SharedFeeds {
  keep(messages: readonly TakenMessage[]): Promise<void>;
  /**
   * Reads what waits of some feeds.
   *
   * @param nowMs - Messages that arrived up to here are read. [ms UTC]
   * @returns Messages read; 0 when nothing waits, or others are reading it. [-]
   */
  readWaiting(nowMs: number, read: (feed: ClaimedFeed) => FeedRead): Promise<number>;
  /** Forgets the samples of every feed and reads all its messages again. */
  rebuild(read: (feed: ClaimedFeed) => FeedRead): Promise<void>;
  close(): Promise<void>;
}
