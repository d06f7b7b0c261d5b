// How much faster the wind arithmetic goes through a month at 1 Hz than a vectorised numpy script.
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { wrapDegrees } from '../src/core/units/index.ts';
import {
  PeriodStream,
  READ_HEADING,
  READ_SPEED,
  roseOf,
  RoseSum,
  type WindPeriod,
} from '../src/core/wind/index.ts';
import { windSeries } from '../test/support/windSeries.ts';
import { numpyFigures, reportAgainstNumpy, type TimedFigures } from './rivals/numpy.ts';

type Report = (row: { name: string; value: number; unit: string }) => void;

const SAMPLES = 30 * 86_400;
const STEP_DEG = 11.25;
const RUNS = 3;

/** Samples handed over at a time, as a store would. */
const CHUNK = 2 ** 16;

/** A month of a vane with 32 positions and cups logged to 0.01 m/s. [deg], [m/s] */
function month(): Float64Array {
  const columns = new Float64Array(2 * SAMPLES);
  windSeries({ seed: 1, count: SAMPLES, intervalMs: 1000, memory: 60 }).forEach((sample, i) => {
    columns[i] = wrapDegrees(Math.round(sample.headingDeg / STEP_DEG) * STEP_DEG);
    columns[SAMPLES + i] = Math.round(sample.speedMPerS * 100) / 100;
  });
  return columns;
}

function ours(columns: Float64Array): TimedFigures {
  const times = new Float64Array(SAMPLES);
  for (let i = 0; i < SAMPLES; i++) times[i] = (i + 1) * 1000;
  const began = performance.now();
  const periods: WindPeriod[] = [];
  const stream = new PeriodStream({ intervalMs: 1000, calmBelowMPerS: 0.5 });
  const roseSum = new RoseSum({
    sectors: { count: 16, firstCentreDeg: 0 },
    speedBoundsMPerS: [2, 4, 6, 8, 10],
    calmBelowMPerS: 0.5,
    equalWeight: 'hour-of-month',
    utcOffsetMin: 0,
  });
  const heading = columns.subarray(0, SAMPLES);
  const speed = columns.subarray(SAMPLES);
  for (let from = 0; from < SAMPLES; from += CHUNK) {
    const to = Math.min(SAMPLES, from + CHUNK);
    const chunk = {
      atMs: times.subarray(from, to),
      headingDeg: heading.subarray(from, to),
      speedMPerS: speed.subarray(from, to),
      read: new Uint8Array(to - from).fill(READ_HEADING + READ_SPEED),
    };
    periods.push(...stream.addColumns(chunk));
    roseSum.addColumns(chunk, STEP_DEG / 2);
  }
  periods.push(stream.end()!);
  const seconds = (performance.now() - began) / 1000;
  const mean = (figure: (period: WindPeriod) => number): number =>
    periods.reduce((sum, period) => sum + figure(period), 0) / periods.length;
  return {
    seconds,
    figures: [
      mean((period) => period.heading!.headingDeg!),
      mean((period) => period.heading!.agreement),
      mean((period) => period.spreadDeg!),
      mean((period) => period.vector!.vectorSpeedMPerS),
      mean((period) => period.speed!.meanMPerS),
      mean((period) => period.speed!.deviationMPerS),
      mean((period) => period.speed!.meanCube),
      mean((period) => period.gust!.speedMPerS),
      mean((period) => period.speed!.leastMPerS),
      mean((period) => period.speed!.mostMPerS),
    ],
    rose: roseOf(roseSum).petals.map(({ readings }) => readings),
  };
}

function rival(file: string): TimedFigures {
  const told = numpyFigures(new URL('./windMonth.py', import.meta.url), file);
  const petal = (sector: number): number =>
    told.rose.slice(sector * 6, sector * 6 + 6).reduce((sum, weight) => sum + weight, 0);
  return { ...told, rose: Array.from({ length: 16 }, (_, sector) => petal(sector)) };
}

/** Rows: both times, their ratio, and how far the figures of the two differ at most. Needs python3 with numpy. */
export async function run(report: Report): Promise<void> {
  const folder = mkdtempSync(join(tmpdir(), 'wind-month-'));
  try {
    const columns = month();
    const file = join(folder, 'columns.f64');
    writeFileSync(file, columns);
    const fastest = (outcomes: TimedFigures[]): TimedFigures =>
      outcomes.sort((a, b) => a.seconds - b.seconds)[0]!;
    const both = Array.from({ length: RUNS }, () => [ours(columns), rival(file)] as const);
    const [mine, theirs] = [fastest(both.map(([a]) => a)), fastest(both.map(([, b]) => b))];
    reportAgainstNumpy(report, 'a month at 1 Hz: periods, gusts and a rose', mine, theirs);
  } finally {
    rmSync(folder, { recursive: true });
  }
}
