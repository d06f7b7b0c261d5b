import { messageNumbers } from '../core/record/index.ts';
import type { Clock, SharedFeeds, SourceBytes, TakenMessage } from '../ports/index.ts';

interface Asked {
  readonly message: TakenMessage;
  done(): void;
  failed(error: unknown): void;
}

/** A store that was lost is tried again after this. [ms] */
const AGAIN_MS = 1000;

/**
 * Keeps messages of several connections, those that come meanwhile together in one go.
 *
 * @returns Takes a message of a connection; ends once it is safe. While the store is away it waits, and with it the
 *   acknowledgement, so that the broker keeps what comes.
 */
export function sharedKeeper(
  feeds: SharedFeeds,
  clock: Clock,
  {
    isStopped,
    onStoreLost,
  }: { readonly isStopped: () => boolean; readonly onStoreLost?: ((error: unknown) => void) | undefined },
): (worker: string, piece: SourceBytes) => Promise<void> {
  let asked: Asked[] = [];
  let isKeeping = false;

  /** Tried again until it succeeds: a commit whose answer was lost may have happened, so it is said to come again. */
  async function kept(messages: readonly TakenMessage[]): Promise<void> {
    for (let batch = messages; ;) {
      try {
        return await feeds.keep(batch);
      } catch (error) {
        if (isStopped()) throw error;
        onStoreLost?.(error);
        batch = batch.map((message) => ({ ...message, isAgain: canRepeat(true, message.bytes) }));
        await new Promise<void>((done) => void clock.after(AGAIN_MS, done));
      }
    }
  }

  async function keepAll(): Promise<void> {
    while (asked.length > 0) {
      const batch = asked;
      asked = [];
      try {
        await kept(batch.map(({ message }) => message));
        for (const { done } of batch) done();
      } catch (error) {
        for (const { failed } of batch) failed(error);
      }
    }
    isKeeping = false;
  }

  return (worker, { begin, bytes, arrivedMs, isAgain = false }) =>
    new Promise((done, failed) => {
      const { name: topic, station } = begin;
      asked.push({
        message: {
          topic,
          station,
          worker,
          arrivedMs: arrivedMs ?? clock.nowMs(),
          bytes,
          isAgain: canRepeat(isAgain, bytes),
        },
        done,
        failed,
      });
      if (isKeeping) return;
      isKeeping = true;
      void keepAll();
    });
}

/** Only lines with numbers come once: of two equal sentences without one, both may well be meant. */
function canRepeat(isAgain: boolean, bytes: Uint8Array): boolean {
  return isAgain && messageNumbers({ bytes }) !== null;
}
