// How fast samples come in beside the engine's own appender, and how long a live line takes to be safe.
import { mkdtempSync, rmSync, statSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { DuckDBInstance } from '@duckdb/node-api';
import { duckdbSampleStore } from '../src/adapters/duckdb/index.ts';
import { machineClock } from '../src/adapters/logFiles/index.ts';
import { fileRawLog } from '../src/adapters/rawLogFiles/index.ts';
import { Recorder } from '../src/app/logRecorder.ts';
import { formatLine, PLAIN_RULE, sampleWith, type Sample } from '../src/core/record/index.ts';

type Report = (row: { name: string; value: number; unit: string }) => void;

const SAMPLES = 300_000;
const BATCH = 50_000;
const LINES = 100_000;
const LIVE = 2000;

/** Samples of a vane with 32 positions and cups, one a second. */
function samplesOf(count: number): Sample[] {
  return Array.from({ length: count }, (_, i) =>
    sampleWith({
      station: 'jetty',
      atMs: 1_700_000_000_000 + 1000 * i,
      withinMs: 160,
      headingDeg: ((i * 7) % 32) * 11.25,
      halfWidthDeg: 5.625,
      speedMPerS: ((i * 13) % 200) / 10,
      word: ((i * 7) % 32).toString(2).padStart(5, '0'),
      pulses: i * 3,
      edges: i * 6,
      stream: 1,
      line: i,
    }),
  );
}

const seconds = async (work: () => Promise<void>): Promise<number> => {
  const began = performance.now();
  await work();
  return (performance.now() - began) / 1000;
};

/** The engine's own appender, row by row, on a table of the same columns, in transactions of the same size. */
async function ownAppender(path: string, samples: readonly Sample[]): Promise<void> {
  const instance = await DuckDBInstance.create(path);
  const db = await instance.connect();
  await db.run(
    `CREATE TABLE sample (station_id INTEGER, at_ms BIGINT, within_ms DOUBLE, heading_deg DOUBLE, half_width_deg DOUBLE,
     mean_heading_deg DOUBLE, agreement DOUBLE, speed_m_per_s DOUBLE, gust_m_per_s DOUBLE, flags INTEGER, word_id INTEGER,
     pulses UINTEGER, edges UINTEGER, stream BIGINT, line BIGINT)`,
  );
  for (let from = 0; from < samples.length; from += BATCH) {
    await db.run('BEGIN');
    const appender = await db.createAppender('sample');
    for (const s of samples.slice(from, from + BATCH)) {
      appender.appendInteger(0);
      appender.appendBigInt(BigInt(s.atMs));
      appender.appendDouble(s.withinMs);
      appender.appendDouble(s.headingDeg!);
      appender.appendDouble(s.halfWidthDeg!);
      appender.appendNull();
      appender.appendNull();
      appender.appendDouble(s.speedMPerS!);
      appender.appendNull();
      appender.appendInteger(s.flags);
      appender.appendInteger(parseInt(s.word!, 2));
      appender.appendUInteger(s.pulses!);
      appender.appendUInteger(s.edges!);
      appender.appendBigInt(BigInt(s.stream));
      appender.appendBigInt(BigInt(s.line));
      appender.endRow();
    }
    appender.closeSync();
    await db.run('COMMIT');
  }
  db.closeSync();
  instance.closeSync();
}

async function ourStore(path: string, samples: readonly Sample[]): Promise<void> {
  const store = await duckdbSampleStore(path);
  for (let from = 0; from < samples.length; from += BATCH) {
    const batch = samples.slice(from, from + BATCH);
    await store.commit({
      samples: batch,
      ledger: [],
      progress: { log: 'bench', seq: from + 1, state: '{}' },
    });
  }
  await store.close();
}

async function bulk(folder: string, report: Report): Promise<void> {
  const samples = samplesOf(SAMPLES);
  const ours: number[] = [];
  const theirs: number[] = [];
  for (let run = 0; run < 3; run++) {
    theirs.push(await seconds(() => ownAppender(join(folder, `theirs-${run}`), samples)));
    ours.push(await seconds(() => ourStore(join(folder, `ours-${run}`), samples)));
  }
  const best = (times: readonly number[]): number => Math.min(...times);
  report({
    name: "samples in, beside the engine's own appender",
    value: Number((best(theirs) / best(ours)).toFixed(2)),
    unit: 'x',
  });
  report({ name: 'samples in', value: Math.round(SAMPLES / best(ours)), unit: '1/s' });
}

/** Lines of an old log through everything: raw log, reading, store. */
async function lines(folder: string, report: Report): Promise<void> {
  const text = Array.from({ length: LINES }, (_, i) =>
    formatLine({
      lineNumber: i,
      sinceStartMs: 250 + 1000 * i,
      counts: [930, 93, 931, 90, 512],
      word: '10100',
      headingDeg: 202.5,
      halfWidthDeg: 5.63,
      flags: [],
      average: null,
      cups: { pulses: 4 * i, edges: 8 * i, gustPulses: null },
    }),
  ).join('\n');
  const bytes = Buffer.from(text);
  const log = await fileRawLog(join(folder, 'lines'));
  const store = await duckdbSampleStore(join(folder, 'lines.duckdb'));
  const rule = { ...PLAIN_RULE, cups: { runPerPulseM: 1, startSpeedMPerS: 0 } };
  const recorder = new Recorder({ log, store, clock: machineClock, rule, choices: {} });
  await recorder.start();
  const begin = { station: 'jetty', source: 'serial', name: 'bench' } as const;
  const took = await seconds(async () => {
    for (let from = 0; from < bytes.length; from += 65_536) {
      const piece = bytes.subarray(from, from + 65_536);
      await recorder.take({ begin, bytes: piece, arrivedMs: 1_700_000_000_000, isEnd: false, done: null });
    }
    await recorder.close();
  });
  report({ name: 'lines of a controller, raw log and store', value: Math.round(LINES / took), unit: '1/s' });
  report({ name: 'memory', value: Math.round(process.memoryUsage().rss / 1e6), unit: 'MB' });
  await live(recorder, report);
  await store.close();
  await log.close();
  report({
    name: 'raw log, a line',
    value: Math.round(statSync(join(folder, 'lines', '0000000000000001.raw')).size / (LINES + LIVE)),
    unit: 'byte',
  });
}

/** One line at a time, each acknowledged once it is on the disk. */
async function live(recorder: Recorder, report: Report): Promise<void> {
  const begin = { station: 'pier', source: 'serial', name: 'live' } as const;
  const times: number[] = [];
  for (let i = 0; i < LIVE; i++) {
    const began = performance.now();
    await recorder.take({
      begin,
      bytes: Buffer.from('vw1 0\n'),
      arrivedMs: 1_700_000_000_000 + i,
      isEnd: false,
      done: null,
    });
    times.push(performance.now() - began);
  }
  times.sort((a, b) => a - b);
  report({
    name: 'a live line until it is safe, half of them within',
    value: Number(times[LIVE >> 1]!.toFixed(2)),
    unit: 'ms',
  });
  report({
    name: 'a live line until it is safe, 99 of 100 within',
    value: Number(times[Math.floor(LIVE * 0.99)]!.toFixed(2)),
    unit: 'ms',
  });
}

/** The question this bench answers, in rows. */
export async function run(report: Report): Promise<void> {
  const folder = mkdtempSync(join(tmpdir(), 'vanewright-bench-'));
  try {
    await bulk(folder, report);
    await lines(folder, report);
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}
