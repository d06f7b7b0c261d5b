import type { PoolClient } from 'pg';
import { sifted, type KnownSample, type Sample } from '../../core/record/index.ts';
import type { StoreBatch, StoreProgress } from '../../ports/index.ts';
import { copyLedger, copySamples } from './copyText.ts';
import { monthOf, Partitions } from './partitions.ts';

/** First and last instant of the samples of each station. [ms UTC] */
function spansOf(samples: readonly Sample[]): Map<string, [number, number]> {
  const spans = new Map<string, [number, number]>();
  for (const { station, atMs } of samples) {
    const span = spans.get(station);
    if (!span) spans.set(station, [atMs, atMs]);
    else spans.set(station, [Math.min(span[0], atMs), Math.max(span[1], atMs)]);
  }
  return spans;
}

/** Writes batches inside a transaction of the caller's; remembers stations and parts that are there. */
export class BatchWriter {
  readonly #partitions = new Partitions('sample');
  readonly #stations = new Map<string, number>();

  /** Forgets what was made, as after a transaction that was undone. */
  forget(): void {
    this.#partitions.forget();
    this.#stations.clear();
  }

  /** Stores those batches whose progress is beyond what is stored. */
  async store(client: PoolClient, batches: readonly StoreBatch[]): Promise<void> {
    const isNew = await this.#progress(
      client,
      batches.map(({ progress }) => progress),
    );
    const fresh = batches.filter(({ progress }) => isNew.has(progress.log));
    const samples = fresh.flatMap((batch) => batch.samples);
    const ledger = fresh.flatMap((batch) => batch.ledger.map((row) => ({ ...row, log: batch.progress.log })));
    const spans = spansOf(samples);
    await this.#know(client, [...spans.keys()]);
    const known = await this.#known(client, spans);
    const { fresh: rows, rows: clashes } = sifted(samples, (station, atMs) => known.get(station)?.get(atMs));
    await this.#partitions.make(client, new Set(rows.map(({ atMs }) => monthOf(atMs))));
    if (rows.length > 0) await copySamples(client, rows, (name) => this.#stations.get(name)!);
    const logs = new Map(
      fresh.flatMap(({ progress, samples: [first] }) =>
        first ? [[first.stream, progress.log] as const] : [],
      ),
    );
    const only = fresh[0]?.progress.log ?? '';
    const all = [
      ...ledger,
      ...clashes.map((row) => ({ ...row, log: fresh.length === 1 ? only : (logs.get(row.stream) ?? only) })),
    ];
    if (all.length > 0) await copyLedger(client, all);
  }

  /** Logs whose progress is new, now stored. */
  async #progress(client: PoolClient, all: readonly StoreProgress[]): Promise<Set<string>> {
    const { rows } = await client.query<{ log: string }>(
      `INSERT INTO progress SELECT * FROM unnest($1::text[], $2::bigint[], $3::text[])
       ON CONFLICT (log) DO UPDATE SET seq = EXCLUDED.seq, state = EXCLUDED.state
       WHERE progress.seq < EXCLUDED.seq RETURNING log`,
      [all.map(({ log }) => log), all.map(({ seq }) => seq), all.map(({ state }) => state)],
    );
    return new Set(rows.map(({ log }) => log));
  }

  /** Numbers of stations; each is locked until the transaction ends, so that two workers never store one instant. */
  async #know(client: PoolClient, names: readonly string[]): Promise<void> {
    const unknown = names.filter((name) => !this.#stations.has(name));
    if (unknown.length > 0) {
      await client.query(
        'INSERT INTO station (name) SELECT unnest($1::text[]) AS name ORDER BY name ON CONFLICT (name) DO NOTHING',
        [unknown],
      );
      const { rows } = await client.query<{ id: number; name: string }>(
        'SELECT id, name FROM station WHERE name = ANY($1::text[])',
        [unknown],
      );
      for (const { id, name } of rows) this.#stations.set(name, id);
    }
    if (names.length === 0) return;
    // In one order everywhere, so that two workers never wait for each other.
    const ids = names.map((name) => this.#stations.get(name)!).sort((a, b) => a - b);
    await client.query('SELECT pg_advisory_xact_lock(1, id) FROM unnest($1::integer[]) AS id', [ids]);
  }

  /** What the store has of the times of a batch. */
  async #known(client: PoolClient, spans: ReadonlyMap<string, readonly [number, number]>) {
    const known = new Map<string, Map<number, KnownSample>>();
    if (spans.size === 0) return known;
    const names = [...spans.keys()];
    const { rows } = await client.query<{
      name: string;
      at_ms: string;
      heading_deg: number | null;
      speed_m_per_s: number | null;
    }>(
      `SELECT span.name, at_ms, heading_deg, speed_m_per_s
       FROM unnest($1::text[], $2::integer[], $3::bigint[], $4::bigint[]) AS span (name, id, first, last)
       CROSS JOIN LATERAL (
         SELECT at_ms, heading_deg, speed_m_per_s FROM sample
         WHERE station_id = span.id AND at_ms BETWEEN span.first AND span.last
       ) AS there`,
      [
        names,
        names.map((name) => this.#stations.get(name)!),
        names.map((name) => spans.get(name)![0]),
        names.map((name) => spans.get(name)![1]),
      ],
    );
    for (const { name, at_ms: at, heading_deg: headingDeg, speed_m_per_s: speedMPerS } of rows) {
      const ofStation = known.get(name) ?? new Map<number, KnownSample>();
      known.set(name, ofStation.set(Number(at), { headingDeg, speedMPerS }));
    }
    return known;
  }
}
