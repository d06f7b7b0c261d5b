// How long a review of a year at 1 Hz takes, whole and from a store; and its means, gusts and rose against numpy.
// The two are compared by the time of the processor that each takes, so that a busy machine does not tell for either.
// A year unless VANEWRIGHT_BENCH_DAYS says otherwise. Needs python3 with numpy, and 4 GB for numpy.
import { closeSync, mkdtempSync, openSync, rmSync, writeSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { duckdbSampleStore, type DuckdbSampleStore } from '../src/adapters/duckdb/index.ts';
import { nodeFonts } from '../src/adapters/nodeFiles/index.ts';
import { reviewRecord } from '../src/app/review/reviewRecord.ts';
import { startingFile } from '../src/core/instrument/index.ts';
import { RecordSum } from '../src/core/review/index.ts';
import { wrapDegrees } from '../src/core/units/index.ts';
import { READ_HEADING, READ_SPEED, type RoseSum } from '../src/core/wind/index.ts';
import type { InstrumentFiles, OutputFolder } from '../src/ports/index.ts';
import { jettyHead } from '../test/support/faultRuns.ts';
import { windSeries } from '../test/support/windSeries.ts';
import { numpyFigures, reportAgainstNumpy, type TimedFigures } from './rivals/numpy.ts';

type Report = (row: { name: string; value: number; unit: string }) => void;

const DAYS = Number(process.env['VANEWRIGHT_BENCH_DAYS'] ?? 365);
const DAY_ROWS = 86_400;
const ROWS = DAYS * DAY_ROWS;
const START_MS = Date.UTC(2026, 0, 1);
const STEP_DEG = 11.25;
/** Rows handed over at a time, as a store would. */
const PIECE_ROWS = 7 * DAY_ROWS;
const SECTORS = 16;

/** Days of invented wind that come again and again, each time turned by one position more. */
const OWN_DAYS = 10;

interface Wind {
  readonly heading: Float64Array;
  readonly speed: Float64Array;
}

/** Ten days of a vane with 32 positions and cups logged to 0.01 m/s. [deg], [m/s] */
function ownWind(): Wind {
  const rows = OWN_DAYS * DAY_ROWS;
  const wind = { heading: new Float64Array(rows), speed: new Float64Array(rows) };
  windSeries({ seed: 1, count: rows, intervalMs: 1000, memory: 60 }).forEach((sample, i) => {
    wind.heading[i] = wrapDegrees(Math.round(sample.headingDeg / STEP_DEG) * STEP_DEG);
    wind.speed[i] = Math.round(sample.speedMPerS * 100) / 100;
  });
  return wind;
}

/** The year, a piece at a time. [row], [deg], [m/s] */
function* pieces(own: Wind): Generator<Wind & { readonly from: number }> {
  for (let from = 0; from < ROWS; from += PIECE_ROWS) {
    const rows = Math.min(PIECE_ROWS, ROWS - from);
    const [heading, speed] = [new Float64Array(rows), new Float64Array(rows)];
    for (let i = 0; i < rows; i++) {
      const place = (from + i) % own.heading.length;
      const turns = Math.floor((from + i) / own.heading.length);
      heading[i] = wrapDegrees(own.heading[place]! + STEP_DEG * turns);
      speed[i] = own.speed[place]!;
    }
    yield { from, heading, speed };
  }
}

const shares = (rose: RoseSum): number[] => Array.from(rose.cells);

function ours(own: Wind): TimedFigures {
  const widths = {
    halfWidthOf: () => STEP_DEG / 2,
    leastDeg: STEP_DEG / 2,
    mostDeg: STEP_DEG / 2,
    source: 'drawn',
  } as const;
  const choices = {
    sectors: SECTORS,
    equalWeight: 'reading',
    utcOffsetMin: 0,
    calmBelowMPerS: 0.5,
    turnRateDegPerS: null,
    widths,
  } as const;
  const { sum, roses } = new RecordSum(choices, 1000, { findings: [], prints: [] });
  let spent = 0;
  for (const { from, heading, speed } of pieces(own)) {
    const columns = {
      atMs: Float64Array.from(speed, (_, i) => START_MS + (from + i + 1) * 1000),
      headingDeg: heading,
      speedMPerS: speed,
      read: new Uint8Array(speed.length).fill(READ_HEADING | READ_SPEED),
    };
    const began = process.cpuUsage();
    sum.addColumns(columns);
    const { user, system } = process.cpuUsage(began);
    spent += user + system;
  }
  sum.end();
  const { periods } = sum;
  const mean = (figure: (period: (typeof periods)[0]) => number): number =>
    periods.reduce((all, period) => all + figure(period), 0) / periods.length;
  return {
    seconds: spent / 1e6,
    figures: [
      mean(({ north, east }) => Math.hypot(north, east)),
      mean(({ windNorth, windEast }) => Math.hypot(windNorth, windEast)),
      mean(({ meanMPerS }) => meanMPerS!),
      mean(({ deviationMPerS }) => deviationMPerS!),
      mean(({ meanCube }) => meanCube!),
      mean(({ gust }) => gust!.speedMPerS),
    ],
    rose: shares(roses.plain),
  };
}

/** Writes the year as numpy reads it: all headings, then all speeds. */
function writeColumns(own: Wind, path: string): void {
  const file = openSync(path, 'w');
  for (const { from, heading, speed } of pieces(own)) {
    writeSync(file, new Uint8Array(heading.buffer), 0, heading.byteLength, from * 8);
    writeSync(file, new Uint8Array(speed.buffer), 0, speed.byteLength, (ROWS + from) * 8);
  }
  closeSync(file);
}

function rival(path: string): TimedFigures {
  return numpyFigures(new URL('./reviewYear.py', import.meta.url), path);
}

/** Fills a store with a year of words, pulses and readings, by the engine itself. */
async function fill({ connection }: DuckdbSampleStore): Promise<void> {
  const { words } = jettyHead.disc.code;
  const count = words.length;
  await connection.run(`INSERT INTO station VALUES (0, 'jetty')`);
  for (const [i, word] of words.entries())
    await connection.run('INSERT INTO word VALUES ($1, $2)', [i, word]);
  await connection.run(`
    INSERT INTO sample
    SELECT 0, ${START_MS} + 1000 * (i + 1), 500, place * 360.0 / ${count}, ${180 / count}, NULL, NULL, round(speed, 2),
      NULL, 0, place, i, 2 * i, 1, i + 1
    FROM (SELECT i,
        CAST(floor(${count} * (2.6 + 0.3 * sin(i / 90000.0) + 0.05 * sin(i / 37.0) + 0.06 * (hash(i) % 1000) / 1000.0))
          AS BIGINT) % ${count} AS place,
        greatest(0, 4.5 + 4 * sin(i / 60000.0) + 0.5 * sin(i / 11.0) + (hash(i + 7) % 1000) / 1000.0) AS speed
      FROM range(${ROWS}) rows(i))`);
}

async function wholeReview(folder: string): Promise<{ seconds: number; megabytes: number; samples: number }> {
  const path = join(folder, 'record.duckdb');
  const filled = await duckdbSampleStore(path);
  await fill(filled);
  await filled.close();
  const store = await duckdbSampleStore(path);
  const files = { readText: async () => startingFile('jetty vane') } as unknown as InstrumentFiles;
  const output: OutputFolder = {
    write: async (_, written) => ({
      paths: written.map((file) => file.path),
      removed: [],
      kept: [],
      setAside: [],
      left: [],
    }),
  };
  const began = performance.now();
  const { review } = await reviewRecord(
    { files, output, fonts: nodeFonts, store },
    {
      path: 'jetty.yaml',
      station: 'jetty',
      sinceMs: null,
      untilMs: null,
      against: null,
      sectors: SECTORS,
      equalWeight: 'reading',
      utcOffsetMin: 0,
      calmBelowMPerS: null,
      out: 'out',
    },
    new AbortController().signal,
  );
  const seconds = (performance.now() - began) / 1000;
  await store.close();
  return { seconds, megabytes: process.resourceUsage().maxRSS / 1000, samples: review.samples };
}

/** The questions this bench answers, in rows. */
export async function run(report: Report): Promise<void> {
  const folder = mkdtempSync(join(tmpdir(), 'review-year-'));
  try {
    const whole = await wholeReview(folder);
    report({ name: 'samples reviewed', value: whole.samples, unit: '-' });
    report({
      name: 'whole review from a store, faults and flags and files with it',
      value: whole.seconds,
      unit: 's',
    });
    report({ name: 'memory at most, filling the store with it', value: whole.megabytes, unit: 'MB' });
    const own = ownWind();
    const mine = ours(own);
    const path = join(folder, 'columns.f64');
    writeColumns(own, path);
    const theirs = rival(path);
    reportAgainstNumpy(report, 'means, gusts and a rose', mine, theirs);
  } finally {
    rmSync(folder, { recursive: true });
  }
}
