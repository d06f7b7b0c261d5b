import { type DuckDBConnection, type DuckDBValue } from '@duckdb/node-api';
import {
  allFollow,
  MOVED_LOG,
  movedRow,
  requireStorable,
  sifted,
  type KnownSample,
  type LedgerReason,
  type LedgerRow,
  type Sample,
} from '../../core/record/index.ts';
import type { SampleStore, SampleWindow, StoreBatch, StoredLedgerRow } from '../../ports/index.ts';
import { Dictionary } from './dictionary.ts';
import { openDatabase, type Database } from './openDatabase.ts';
import { SampleChunk } from './sampleTable.ts';
import {
  columnsInOrder,
  FAULT_FIELDS,
  faultColumnsFrom,
  SAMPLE_FIELDS,
  samplesOf,
  WIND_FIELDS,
  windColumnsFrom,
} from './sampleRow.ts';

/** A store in a file of the embedded engine, with what had to be put aside to open it. */
export interface DuckdbSampleStore extends SampleStore {
  readonly putAside: readonly string[];
  /** The connection, for the archive and the export. */
  readonly connection: DuckDBConnection;
}

/** Samples are read this much time at once, so that memory stays bounded. [ms] */
const SPAN_MS = 86_400_000;
const COLUMN_SPAN_MS = 7 * SPAN_MS;

class Store implements DuckdbSampleStore {
  readonly connection: DuckDBConnection;
  readonly putAside: readonly string[];
  readonly #database: Database;
  readonly #chunk = new SampleChunk();
  readonly #stations = new Dictionary('station', 'name');
  readonly #words = new Dictionary('word', 'digits');
  /** Instant of the last sample of each station. [ms UTC] */
  readonly #lastMs = new Map<string, number>();
  #last: Promise<unknown> = Promise.resolve();

  constructor(database: Database) {
    this.#database = database;
    this.connection = database.connection;
    this.putAside = database.putAside;
  }

  async load(): Promise<void> {
    await this.#stations.load(this.connection);
    await this.#words.load(this.connection);
    this.#lastMs.clear();
    for (const { station, lastMs } of await this.#spans()) this.#lastMs.set(station, lastMs);
  }

  /** One connection holds one transaction, so work queues up and runs one after another. */
  #inTurn<T>(work: () => Promise<T>): Promise<T> {
    const mine = this.#last.then(work);
    this.#last = mine.catch(() => {});
    return mine;
  }

  async #rows(sql: string, values: DuckDBValue[] = []): Promise<DuckDBValue[][]> {
    return (await this.connection.runAndReadAll(sql, values)).getRows();
  }

  async #progress(log: string) {
    const [row] = await this.#rows('SELECT seq, state FROM progress WHERE log = $1', [log]);
    return row ? { log, seq: Number(row[0]), state: row[1] as string } : null;
  }

  progress(log: string) {
    return this.#inTurn(() => this.#progress(log));
  }

  async commit(batch: StoreBatch): Promise<void> {
    requireStorable(batch.samples);
    await this.#inTurn(() => this.#commit(batch));
  }

  async #commit({ samples, ledger, progress }: StoreBatch): Promise<void> {
    const stored = await this.#progress(progress.log);
    if (stored && progress.seq <= stored.seq) return;
    const { fresh, rows } = allFollow(samples, this.#lastMs)
      ? { fresh: samples, rows: [] }
      : await this.#sifted(samples);
    await this.connection.run('BEGIN');
    try {
      await this.#append(fresh);
      await this.#appendLedger(progress.log, [...ledger, ...rows]);
      await this.connection.run('DELETE FROM progress WHERE log = $1', [progress.log]);
      await this.connection.run('INSERT INTO progress VALUES ($1, $2, $3)', [
        progress.log,
        BigInt(progress.seq),
        progress.state,
      ]);
      await this.connection.run('COMMIT');
    } catch (error) {
      await this.connection.run('ROLLBACK').catch(() => {});
      await this.load();
      throw error;
    }
    this.#noteLast(fresh);
  }

  #noteLast(samples: readonly Sample[]): void {
    let [station, last] = ['', -Infinity];
    for (const sample of samples) {
      if (sample.station !== station) {
        if (station !== '') this.#lastMs.set(station, last);
        station = sample.station;
        last = this.#lastMs.get(station) ?? -Infinity;
      }
      if (sample.atMs > last) last = sample.atMs;
    }
    if (station !== '') this.#lastMs.set(station, last);
  }

  /** The slow way in: some samples may be there already. */
  async #sifted(samples: readonly Sample[]) {
    const known = new Map<string, Map<number, KnownSample>>();
    for (const station of new Set(samples.map((sample) => sample.station))) {
      const id = this.#stations.known(station);
      if (id === null) continue;
      const times = samples.flatMap((sample) => (sample.station === station ? [sample.atMs] : []));
      const [from, to] = times.reduce(
        ([a, b], at) => [Math.min(a, at), Math.max(b, at)],
        [Infinity, -Infinity],
      );
      const rows = await this.#rows(
        'SELECT at_ms, heading_deg, speed_m_per_s FROM sample WHERE station_id = $1 AND at_ms BETWEEN $2 AND $3',
        [id, BigInt(from), BigInt(to)],
      );
      const ofStation = rows.map(([at, headingDeg, speedMPerS]): [number, KnownSample] => [
        Number(at),
        { headingDeg: headingDeg as number | null, speedMPerS: speedMPerS as number | null },
      ]);
      known.set(station, new Map(ofStation));
    }
    return sifted(samples, (station, atMs) => known.get(station)?.get(atMs));
  }

  async #append(samples: readonly Sample[]): Promise<void> {
    if (samples.length === 0) return;
    const appender = await this.connection.createAppender('sample');
    this.#chunk.append(appender, samples, {
      station: (name) => this.#stations.id(name),
      word: (digits) => this.#words.id(digits),
    });
    appender.closeSync();
    await this.#appendLight(samples);
    await this.#stations.store(this.connection);
    await this.#words.store(this.connection);
  }

  /** Counts lie beside the samples: most samples have none, and the fast way in takes only numbers. */
  async #appendLight(samples: readonly Sample[]): Promise<void> {
    const lit = samples.filter(({ counts }) => counts !== null);
    if (lit.length === 0) return;
    const appender = await this.connection.createAppender('light');
    for (const { station, atMs, counts } of lit) {
      appender.appendInteger(this.#stations.id(station));
      appender.appendBigInt(BigInt(atMs));
      appender.appendVarchar(counts!.join(' '));
      appender.endRow();
    }
    appender.closeSync();
  }

  async #appendLedger(log: string, rows: readonly LedgerRow[]): Promise<void> {
    if (rows.length === 0) return;
    const appender = await this.connection.createAppender('ledger');
    for (const { stream, reason, fromLine, toLine, count, got } of rows) {
      appender.appendVarchar(log);
      appender.appendBigInt(BigInt(stream));
      appender.appendVarchar(reason);
      appender.appendBigInt(BigInt(fromLine));
      appender.appendBigInt(BigInt(toLine));
      appender.appendBigInt(BigInt(count));
      appender.appendVarchar(got);
      appender.endRow();
    }
    appender.closeSync();
  }

  async #spans() {
    const rows = await this.#rows(
      'SELECT name, count(*), min(at_ms), max(at_ms) FROM sample JOIN station ON id = station_id GROUP BY name ORDER BY name',
    );
    return rows.map(([station, count, first, last]) => ({
      station: station as string,
      samples: Number(count),
      firstMs: Number(first),
      lastMs: Number(last),
    }));
  }

  stations() {
    return this.#inTurn(() => this.#spans());
  }

  /** Parts of a window that hold samples, none longer than a span. */
  async *#parts({ station, fromMs, untilMs }: SampleWindow, spanMs: number) {
    const id = this.#stations.known(station);
    if (id === null) return;
    for (let from = fromMs; ;) {
      const [row] = await this.#inTurn(() =>
        this.#rows('SELECT min(at_ms) FROM sample WHERE station_id = $1 AND at_ms >= $2 AND at_ms < $3', [
          id,
          BigInt(Math.ceil(from)),
          BigInt(Math.ceil(untilMs)),
        ]),
      );
      if (row?.[0] === null || row === undefined) return;
      const first = Number(row[0]);
      const until = Math.min(untilMs, first + spanMs);
      yield { id, first, until };
      from = until;
    }
  }

  async *samples(window: SampleWindow): AsyncIterable<readonly Sample[]> {
    for await (const { id, first, until } of this.#parts(window, SPAN_MS)) {
      yield await this.#inTurn(() => this.#samples(window.station, [id, first, until]));
    }
  }

  async #samples(station: string, [id, first, until]: readonly [number, number, number]) {
    const { columns, counts } = await this.#part(SAMPLE_FIELDS, [id, first, until]);
    return samplesOf(station, columns, counts, (word) => this.#words.text(word));
  }

  /** Fields of a part's samples, and the counts of those that have them. */
  async #part(fields: string, [id, first, until]: readonly [number, number, number]) {
    const part = [id, BigInt(first), BigInt(Math.ceil(until))];
    const light = await this.#rows(
      'SELECT at_ms, counts FROM light WHERE station_id = $1 AND at_ms >= $2 AND at_ms < $3',
      part,
    );
    const columns = await columnsInOrder(this.connection, fields, part);
    return { columns, counts: new Map(light.map(([at, text]) => [Number(at), text as string])) };
  }

  async *faultColumns(window: SampleWindow) {
    for await (const { id, first, until } of this.#parts(window, COLUMN_SPAN_MS)) {
      yield await this.#inTurn(async () => {
        const { columns, counts } = await this.#part(FAULT_FIELDS, [id, first, until]);
        return faultColumnsFrom(columns, counts, this.#words.texts);
      });
    }
  }

  async *columns(window: SampleWindow) {
    for await (const { id, first, until } of this.#parts(window, COLUMN_SPAN_MS)) {
      yield await this.#inTurn(() => this.#columns(id, first, until));
    }
  }

  async #columns(id: number, first: number, until: number) {
    const part = [id, BigInt(first), BigInt(Math.ceil(until))];
    return windColumnsFrom(await columnsInOrder(this.connection, WIND_FIELDS, part));
  }

  async ledgerCounts() {
    const rows = await this.#inTurn(() =>
      this.#rows('SELECT reason, sum(count) FROM ledger GROUP BY reason ORDER BY 2 DESC, 1'),
    );
    return rows.map(([reason, count]) => ({ reason: reason as LedgerReason, count: Number(count) }));
  }

  async *ledger(): AsyncIterable<readonly StoredLedgerRow[]> {
    const step = 10_000;
    for (let from = 0; ; from += step) {
      const rows = await this.#inTurn(() =>
        this.#rows(
          `SELECT log, stream, reason, from_line, to_line, count, got FROM ledger ORDER BY rowid LIMIT ${step} OFFSET ${from}`,
        ),
      );
      if (rows.length > 0) {
        yield rows.map(([log, stream, reason, fromLine, toLine, count, got]) => ({
          log: log as string,
          stream: Number(stream),
          reason: reason as LedgerReason,
          fromLine: Number(fromLine),
          toLine: Number(toLine),
          count: Number(count),
          got: got as string,
        }));
      }
      if (rows.length < step) return;
    }
  }

  moveOut({ station, fromMs, untilMs }: SampleWindow, where: string) {
    return this.#inTurn(async () => {
      const id = this.#stations.known(station);
      const bounds = [id, BigInt(Math.ceil(fromMs)), BigInt(Math.ceil(untilMs))] as DuckDBValue[];
      const inWindow = 'FROM sample WHERE station_id = $1 AND at_ms >= $2 AND at_ms < $3';
      await this.connection.run('BEGIN');
      try {
        const [row] = await this.#rows(`SELECT count(*) ${inWindow}`, bounds);
        await this.connection.run(`DELETE ${inWindow}`, bounds);
        await this.#appendLedger(MOVED_LOG, [movedRow(station, Number(row![0]), where)]);
        await this.connection.run('COMMIT');
      } catch (error) {
        await this.connection.run('ROLLBACK');
        throw error;
      }
      // Room in the file is given back for new samples only once it is written out.
      await this.connection.run('CHECKPOINT');
    });
  }

  clear() {
    return this.#inTurn(async () => {
      for (const table of ['sample', 'light', 'ledger', 'progress', 'station', 'word']) {
        await this.connection.run(`DELETE FROM ${table}`);
      }
      await this.load();
    });
  }

  close() {
    return this.#inTurn(async () => {
      this.connection.closeSync();
      this.#database.instance.closeSync();
    });
  }
}

/**
 * Opens or makes a store in a file.
 *
 * @param path - A file, or ':memory:'.
 * @throws `store/in-use`, `store/newer`, `store/not-writable`
 */
export async function duckdbSampleStore(path: string): Promise<DuckdbSampleStore> {
  const store = new Store(await openDatabase(path));
  await store.load();
  return store;
}
