import type { PoolClient } from 'pg';
import type { FeedMessage } from '../../core/record/index.ts';
import type { TakenMessage } from '../../ports/index.ts';
import { monthOf, type Partitions } from './partitions.ts';

/** A feed whose row this transaction holds. */
export interface HeldFeed {
  readonly id: number;
  readonly topic: string;
  readonly station: string;
}

/** A message that waits, with the number it waits under. */
export interface WaitingMessage extends FeedMessage {
  readonly feedId: number;
}

/** Feeds read in one transaction [-], and messages of them. [-] */
const FEEDS_MOST = 200;
const MESSAGES_MOST = 5000;
/** A message that was sent again may have been read this long ago. [ms] */
const AGAIN_WITHIN_MS = 8 * 86_400_000;

/** Name under which progress and ledger of a feed are kept. */
export const feedLog = (topic: string): string => `feed ${topic}`;

/** Stores messages that were taken, in their order. */
export async function insertWaiting(
  client: PoolClient,
  messages: readonly TakenMessage[],
  feedId: (topic: string) => number,
): Promise<void> {
  await client.query(
    `INSERT INTO waiting (feed_id, worker, arrived_ms, bytes)
     SELECT feed_id, worker, arrived_ms, bytes
     FROM unnest($1::integer[], $2::text[], $3::bigint[], $4::bytea[], $5::boolean[])
       WITH ORDINALITY AS taken (feed_id, worker, arrived_ms, bytes, is_again, place)
     WHERE NOT is_again OR NOT EXISTS (
       SELECT 1 FROM message AS known WHERE known.feed_id = taken.feed_id AND known.bytes = taken.bytes
         AND known.arrived_ms BETWEEN taken.arrived_ms - ${AGAIN_WITHIN_MS} AND taken.arrived_ms
       UNION ALL
       SELECT 1 FROM waiting AS known WHERE known.feed_id = taken.feed_id AND known.bytes = taken.bytes
     )
     ORDER BY place`,
    [
      messages.map(({ topic }) => feedId(topic)),
      messages.map(({ worker }) => worker),
      messages.map(({ arrivedMs }) => Math.round(arrivedMs)),
      messages.map(({ bytes }) => Buffer.from(bytes)),
      messages.map(({ isAgain }) => isAgain),
    ],
  );
}

/** Holds feeds that have something waiting and that nobody else reads. */
export async function holdFeeds(client: PoolClient, nowMs: number): Promise<HeldFeed[]> {
  const { rows } = await client.query<HeldFeed>(
    `SELECT id, topic, station FROM feed
     WHERE EXISTS (SELECT 1 FROM waiting WHERE feed_id = feed.id AND arrived_ms <= $1)
     LIMIT ${FEEDS_MOST} FOR UPDATE SKIP LOCKED`,
    [nowMs],
  );
  return rows;
}

/** What waits of these feeds: all that arrived up to an instant, which is earlier than asked for when it is too much. */
export async function waitingOf(
  client: PoolClient,
  feeds: readonly HeldFeed[],
  nowMs: number,
): Promise<{ readonly messages: readonly WaitingMessage[]; readonly seenUntilMs: number }> {
  const ids = feeds.map(({ id }) => id);
  const cut = await client.query<{ arrived_ms: string }>(
    `SELECT arrived_ms FROM waiting WHERE feed_id = ANY($1::integer[]) AND arrived_ms <= $2
     ORDER BY arrived_ms OFFSET ${MESSAGES_MOST} LIMIT 1`,
    [ids, nowMs],
  );
  const seenUntilMs = cut.rows[0] ? Number(cut.rows[0].arrived_ms) : nowMs;
  const { rows } = await client.query<{
    feed_id: number;
    id: string;
    worker: string;
    arrived_ms: string;
    bytes: Buffer;
  }>(
    `SELECT feed_id, id, worker, arrived_ms, bytes FROM waiting
     WHERE feed_id = ANY($1::integer[]) AND arrived_ms <= $2`,
    [ids, seenUntilMs],
  );
  const messages = rows.map((row) => ({
    feedId: row.feed_id,
    worker: row.worker,
    order: Number(row.id),
    arrivedMs: Number(row.arrived_ms),
    bytes: row.bytes,
  }));
  return { messages, seenUntilMs };
}

/** Moves messages that were read to where they stay, numbered in the order of reading. */
export async function moveRead(
  client: PoolClient,
  read: readonly {
    readonly feedId: number;
    readonly from: number;
    readonly messages: readonly FeedMessage[];
  }[],
  partitions: Partitions,
): Promise<void> {
  const rows = read.flatMap(({ feedId, from, messages }) =>
    messages.map((message, i) => ({ feedId, seq: from + i + 1, message })),
  );
  await partitions.make(client, new Set(rows.map(({ message }) => monthOf(message.arrivedMs))));
  await client.query(
    `WITH moved AS (
       DELETE FROM waiting USING unnest($1::integer[], $2::bigint[], $3::bigint[], $4::bigint[])
         AS done (feed_id, arrived_ms, id, seq)
       WHERE waiting.feed_id = done.feed_id AND waiting.arrived_ms = done.arrived_ms AND waiting.id = done.id
       RETURNING waiting.feed_id, done.seq, waiting.arrived_ms, worker, bytes
     )
     INSERT INTO message (feed_id, seq, arrived_ms, worker, bytes)
     SELECT feed_id, seq, arrived_ms, worker, bytes FROM moved`,
    [
      rows.map(({ feedId }) => feedId),
      rows.map(({ message }) => message.arrivedMs),
      rows.map(({ message }) => message.order),
      rows.map(({ seq }) => seq),
    ],
  );
}
