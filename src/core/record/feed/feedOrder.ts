import { messageNumbers, type FeedMessage, type MessageNumbers } from './feedMessage.ts';

interface Waiting {
  readonly message: FeedMessage;
  /** It closes a gap that was read over already, so nothing has to wait for it nor it for anything. */
  readonly isLate: boolean;
  readonly numbers: MessageNumbers | null;
}

/** Where numbers skip, the missing line may still be with another worker for this long. [ms] */
export const GAP_WAIT_MS = 2000;

/** By how many numbers a message lies ahead of the last one; what lies behind, as after a restart, comes last. */
function ahead({ numbers, isLate }: Waiting, last: number | null): number {
  if (isLate) return 0;
  if (!numbers || last === null) return 0;
  return numbers.first > last ? numbers.first - last : Infinity;
}

/** Whether `a` is to be read before `b`. */
function isBefore(a: Waiting, b: Waiting, last: number | null): boolean {
  const [byA, byB] = [ahead(a, last), ahead(b, last)];
  if (byA !== byB) return byA < byB;
  if (a.numbers && b.numbers && a.numbers.first !== b.numbers.first) return a.numbers.first < b.numbers.first;
  return a.message.arrivedMs < b.message.arrivedMs;
}

/** Messages by worker, each worker's own in the order in which it took them. */
function byWorker(
  messages: readonly FeedMessage[],
  isLate: (message: FeedMessage) => boolean,
): { list: Waiting[]; at: number }[] {
  const ofWorker = new Map<string, Waiting[]>();
  for (const message of [...messages].sort((a, b) => a.order - b.order)) {
    const list = ofWorker.get(message.worker) ?? [];
    list.push({ message, numbers: messageNumbers(message), isLate: isLate(message) });
    ofWorker.set(message.worker, list);
  }
  return [...ofWorker.values()].map((list) => ({ list, at: 0 }));
}

/**
 * Messages of one station in the order in which the station sent them, as far as can be told; those behind a gap that
 * may still close are left out.
 *
 * Each worker has its own in the order of sending, so only the first of every worker is ever looked at. Of those, the
 * next is the one whose number follows the last; after a restart no number does, and the lowest begins the new run.
 *
 * @param messages - Of one station, in any order. n >= 0
 * @param known - Number of the last line read, `null` when there is none [-]; until when everything that arrived is among
 *   the messages [ms UTC]; and which messages close a gap that was read over already.
 * @check src/core/record/feed/feedReader.test.ts
 */
export function inSendingOrder(
  messages: readonly FeedMessage[],
  known: {
    readonly lastNumber: number | null;
    readonly seenUntilMs: number;
    readonly isLate: (message: FeedMessage) => boolean;
  },
): FeedMessage[] {
  const { lastNumber, seenUntilMs, isLate: closesGap } = known;
  const queues = byWorker(messages, closesGap);
  const ordered: FeedMessage[] = [];
  for (let last = lastNumber; ordered.length < messages.length;) {
    const open = queues.filter(({ list, at }) => at < list.length);
    const next = open.reduce((best, queue) =>
      isBefore(queue.list[queue.at]!, best.list[best.at]!, last) ? queue : best,
    );
    const { message, numbers, isLate } = next.list[next.at]!;
    const follows = isLate || numbers === null || numbers.first === (last ?? Number.NaN) + 1;
    if (!follows && message.arrivedMs > seenUntilMs - GAP_WAIT_MS) return ordered;
    next.at++;
    ordered.push(message);
    if (numbers && !isLate) last = numbers.last;
  }
  return ordered;
}
