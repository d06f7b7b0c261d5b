import { mkdir, open, rename, rm } from 'node:fs/promises';
import { dirname, join } from 'node:path';
import { randomUUID } from 'node:crypto';
import { DuckDBInstance } from '@duckdb/node-api';
import { VanewrightError } from '../../core/error/index.ts';
import type { ArchiveFigures, ArchiveFolder, SampleStore, SampleWindow } from '../../ports/index.ts';
import { duckdbSampleStore, type DuckdbSampleStore } from './duckdbSampleStore.ts';

/** Columns of the archive, from those of the table; archiveColumns in core says what each means. */
const COLUMNS = `epoch_ms(sample.at_ms) AS time, within_ms / 1000 AS time_within_s, heading_deg AS wind_from_direction_deg,
  half_width_deg, mean_heading_deg AS mean_from_direction_deg, agreement, speed_m_per_s AS wind_speed_m_s,
  gust_m_per_s AS wind_speed_of_gust_m_s, flags, digits AS word, counts, pulses, edges, stream AS source, line`;

const isOurs = (store: SampleStore): store is DuckdbSampleStore => 'connection' in store;
const quoted = (text: string): string => `'${text.replaceAll("'", "''")}'`;

/** Writes one window of a store of ours. */
async function writeParquet(
  store: DuckdbSampleStore,
  { station, fromMs, untilMs }: SampleWindow,
  path: string,
): Promise<number> {
  const written = await store.connection.runAndReadAll(
    `COPY (SELECT ${COLUMNS} FROM sample JOIN station ON station.id = station_id LEFT JOIN word ON word.id = word_id
       LEFT JOIN light ON light.station_id = sample.station_id AND light.at_ms = sample.at_ms
       WHERE name = ${quoted(station)} AND sample.at_ms >= ${Math.ceil(fromMs)} AND sample.at_ms < ${Math.ceil(untilMs)} ORDER BY sample.at_ms)
     TO ${quoted(path)} (FORMAT parquet, COMPRESSION snappy)`,
  );
  return Number(written.getRows()[0]![0]);
}

/** Samples of another store pass through one in memory, a window at a time. */
async function copied(store: SampleStore, window: SampleWindow, path: string): Promise<number> {
  const passing = await duckdbSampleStore(':memory:');
  try {
    let seq = 0;
    for await (const samples of store.samples(window)) {
      await passing.commit({ samples, ledger: [], progress: { log: 'passing', seq: ++seq, state: '' } });
    }
    return await writeParquet(passing, window, path);
  } finally {
    await passing.close();
  }
}

/** Reads a file again, through an engine that knows nothing of the store. */
async function figuresOf(path: string): Promise<ArchiveFigures> {
  const instance = await DuckDBInstance.create(':memory:');
  const connection = await instance.connect();
  try {
    const read = await connection.runAndReadAll(
      `SELECT count(*), count(wind_from_direction_deg), count(wind_speed_m_s),
         coalesce(fsum(wind_from_direction_deg), 0), coalesce(fsum(wind_speed_m_s), 0)
       FROM read_parquet(${quoted(path)})`,
    );
    const [rows, headings, speeds, headingSum, speedSum] = read.getRows()[0]!.map(Number);
    return {
      rows: rows!,
      headings: headings!,
      speeds: speeds!,
      headingSum: headingSum!,
      speedSum: speedSum!,
    };
  } finally {
    connection.closeSync();
    instance.closeSync();
  }
}

function problem(folder: string, error: unknown): VanewrightError {
  return new VanewrightError({
    code: 'store/archive-not-written',
    what: 'The archive could not be written; files already there are whole.',
    where: folder,
    got: error instanceof Error ? error.message.slice(0, 200) : String(error),
    allowed: 'a folder that you may write to, with room enough',
    fix: 'Free some space, or name another folder with --out.',
  });
}

/** An archive in a folder; Parquet is written by the embedded engine, whatever store the samples come from. */
export function duckdbArchive(folder: string): ArchiveFolder {
  /** Gives a name to write to, and the file its own name once it is whole and on the disk. */
  async function whole<T>(path: string, write: (draft: string) => Promise<T>): Promise<T> {
    const goal = join(folder, path);
    const draft = `${goal}.${randomUUID()}.part`;
    try {
      await mkdir(dirname(goal), { recursive: true });
      const result = await write(draft);
      const file = await open(draft, 'r+');
      await file.sync();
      await file.close();
      await rename(draft, goal);
      return result;
    } catch (error) {
      await rm(draft, { force: true }).catch(() => {});
      throw error instanceof VanewrightError ? error : problem(folder, error);
    }
  }
  return {
    figures: (path) => figuresOf(join(folder, path)),
    text: (path, pieces) =>
      whole(path, async (draft) => {
        const file = await open(draft, 'w');
        try {
          for await (const piece of pieces) await file.write(piece);
        } finally {
          await file.close();
        }
      }),
    parquet: (path, store, window) =>
      whole(path, (draft) =>
        isOurs(store) ? writeParquet(store, window, draft) : copied(store, window, draft),
      ),
  };
}
