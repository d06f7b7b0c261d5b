import { NO_FEED, readFeed, rereadFeed, type FeedState, type Sample } from '../core/record/index.ts';
import type { ReadingRule } from '../core/record/index.ts';
import type { ClaimedFeed, Clock, FeedRead, LineSource, SharedFeeds, SourceBytes } from '../ports/index.ts';
import { sharedKeeper } from './sharedKeeper.ts';

/** What a worker takes that shares the lines of a broker with others and keeps nothing itself. */
export interface SharedRun {
  readonly feeds: SharedFeeds;
  /** Connections to the broker, each under a name that no other worker has. */
  readonly connections: readonly { readonly worker: string; readonly source: LineSource }[];
  readonly clock: Clock;
  readonly rule: ReadingRule;
  /** Read all messages again before anything else. */
  readonly isRebuild: boolean;
  /** Hears of samples as they are stored. */
  readonly onSamples?: (samples: readonly Sample[]) => void;
  readonly onBytes?: (bytes: SourceBytes) => void;
  /** Hears that the store cannot be reached; the broker keeps what comes meanwhile. */
  readonly onStoreLost?: (error: unknown) => void;
}

/** What a shared worker did. */
export interface SharedSummary {
  /** Samples stored by this worker, whoever took their messages. [-] */
  readonly stored: number;
  readonly bytes: number;
}

/** Waiting messages are looked for this often. [ms] */
const READ_EVERY_MS = 250;

/** Reads messages of a feed and gives what the store keeps for the next reading. */
function reading(rule: ReadingRule, feed: ClaimedFeed, isKnownOrder: boolean): FeedRead {
  const { topic, station, stream, messages, seenUntilMs } = feed;
  const head = { stream, station, source: 'mqtt', name: topic } as const;
  const state = feed.state === null ? NO_FEED : (JSON.parse(feed.state) as FeedState);
  const read = isKnownOrder
    ? rereadFeed(head, rule, state, messages)
    : readFeed(head, rule, state, { messages, seenUntilMs });
  return { ...read, state: JSON.stringify(read.state) };
}

/**
 * Takes messages of a broker together with other workers, and reads whatever waits, until its sources end or are closed.
 *
 * @throws what a source says.
 */
export async function logShared(
  run: SharedRun,
  isStopped: () => boolean = () => false,
): Promise<SharedSummary> {
  const { feeds, clock, rule } = run;
  let [stored, bytes] = [0, 0];
  if (run.isRebuild) await feeds.rebuild((feed) => reading(rule, feed, true));
  let isEnding = false;
  const readAll = async (): Promise<void> => {
    for (let read = 1; read > 0;) {
      const fresh: Sample[] = [];
      read = await feeds.readWaiting(clock.nowMs(), (feed) => {
        const result = reading(rule, feed, false);
        for (const sample of result.samples) fresh.push(sample);
        return result;
      });
      // Not before: a reading that is undone is done again, by this worker or another.
      stored += fresh.length;
      if (fresh.length > 0) run.onSamples?.(fresh);
    }
  };
  const pause = (): Promise<void> => new Promise((done) => void clock.after(READ_EVERY_MS, done));
  const readOn = async (): Promise<void> => {
    while (!isEnding) {
      await readAll().catch((error: unknown) => run.onStoreLost?.(error));
      await pause();
    }
  };
  const keeper = sharedKeeper(feeds, clock, { isStopped, onStoreLost: run.onStoreLost });
  const reader = readOn();
  const running = run.connections.map(({ worker, source }) =>
    source.run(async (piece) => {
      await keeper(worker, piece);
      bytes += piece.bytes.length;
      run.onBytes?.(piece);
    }),
  );
  try {
    await Promise.all(running);
  } finally {
    await Promise.all(run.connections.map(({ source }) => source.close()));
    await Promise.allSettled(running);
    isEnding = true;
    await reader;
  }
  await readAll();
  return { stored, bytes };
}
