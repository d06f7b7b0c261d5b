// Whether months at one line a second comes in whole: lines in, Parquet out, and the sums as another program reads them.
// 30 days unless VANEWRIGHT_BENCH_DAYS says otherwise; a whole year takes several minutes.
import { mkdtempSync, rmSync, statSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { asyncBufferFromFile, parquetRead } from 'hyparquet';
import { duckdbArchive, duckdbSampleStore } from '../src/adapters/duckdb/index.ts';
import { machineClock } from '../src/adapters/logFiles/index.ts';
import { fileRawLog } from '../src/adapters/rawLogFiles/index.ts';
import { archiveRecord } from '../src/app/archiveRecord.ts';
import { Recorder } from '../src/app/logRecorder.ts';
import { PLAIN_RULE } from '../src/core/record/index.ts';

type Report = (row: { name: string; value: number; unit: string }) => void;

const DAYS = Number(process.env['VANEWRIGHT_BENCH_DAYS'] ?? 30);
const LINES_A_DAY = 86_400;
const START_MS = Date.parse('2026-01-01T00:00:00Z');
const PIECE_LINES = 5000;

/** Speeds in tenths, so that sums are whole numbers. [0.1 m/s] */
const speedAt = (i: number): number => (i * 7919) % 251;
const headingAt = (i: number): number => (i * 104_729) % 360;

/** A log of columns, a piece at a time; a year of it is over 1 GB. */
function piece(from: number, lines: number): Uint8Array {
  const rows: string[] = from === 0 ? ['time,dir,speed_ms'] : [];
  for (let i = from; i < from + lines; i++) {
    const speed = speedAt(i);
    const time = new Date(START_MS + 1000 * i).toISOString().slice(0, 19);
    rows.push(`${time}Z,${headingAt(i)},${Math.floor(speed / 10)}.${speed % 10}`);
  }
  return Buffer.from(`${rows.join('\n')}\n`);
}

/** Sums of a file as another program reads it. */
async function readBack(path: string): Promise<{ rows: number; heading: number; speed: number }> {
  const sums = { rows: 0, heading: 0, speed: 0 };
  const file = await asyncBufferFromFile(path);
  await parquetRead({
    file,
    columns: ['wind_from_direction_deg', 'wind_speed_m_s'],
    onChunk: ({ columnName, columnData }) => {
      for (let i = 0; i < columnData.length; i++) {
        const value = columnData[i] as number | null;
        if (columnName === 'wind_speed_m_s') sums.speed += Math.round((value ?? 0) * 10);
        else sums.heading += value ?? 0;
      }
      if (columnName === 'wind_speed_m_s') sums.rows += columnData.length;
    },
  });
  return sums;
}

/** The question this bench answers, in rows. */
export async function run(report: Report): Promise<void> {
  const folder = mkdtempSync(join(tmpdir(), 'vanewright-year-'));
  const lines = DAYS * LINES_A_DAY;
  const log = await fileRawLog(join(folder, 'raw'));
  const store = await duckdbSampleStore(join(folder, 'record.duckdb'));
  try {
    const recorder = new Recorder({ log, store, clock: machineClock, rule: PLAIN_RULE, choices: {} });
    await recorder.start();
    const begin = { station: 'jetty', source: 'file', name: 'year.csv' } as const;
    let [heading, speed, most] = [0, 0, 0];
    const began = performance.now();
    for (let from = 0; from < lines; from += PIECE_LINES) {
      const isEnd = from + PIECE_LINES >= lines;
      await recorder.take({
        begin,
        bytes: piece(from, Math.min(PIECE_LINES, lines - from)),
        arrivedMs: null,
        isEnd,
        done: null,
      });
      most = Math.max(most, process.memoryUsage().rss);
    }
    await recorder.close();
    const took = (performance.now() - began) / 1000;
    for (let i = 0; i < lines; i++) {
      heading += headingAt(i);
      speed += speedAt(i);
    }
    report({ name: 'lines in, making them included', value: Math.round(lines / took), unit: '1/s' });
    report({ name: 'memory at most', value: Math.round(most / 1e6), unit: 'MB' });
    report({
      name: 'store',
      value: Math.round(statSync(join(folder, 'record.duckdb')).size / 1e6),
      unit: 'MB',
    });
    const out = performance.now();
    const whole = { format: 'parquet', sinceMs: null, untilMs: null } as const;
    const { files, rows } = await archiveRecord(store, duckdbArchive(join(folder, 'out')), whole);
    report({ name: 'Parquet out', value: Number(((performance.now() - out) / 1000).toFixed(1)), unit: 's' });
    const sums = { rows: 0, heading: 0, speed: 0 };
    for (const { path } of files) {
      const read = await readBack(join(folder, 'out', path));
      sums.rows += read.rows;
      sums.heading += read.heading;
      sums.speed += read.speed;
    }
    const isEqual = rows === lines && sums.rows === lines && sums.heading === heading && sums.speed === speed;
    report({
      name: 'rows and sums as another program reads them: equal',
      value: Number(isEqual),
      unit: '1 = yes',
    });
  } finally {
    await store.close();
    await log.close();
    rmSync(folder, { recursive: true, force: true });
  }
}
