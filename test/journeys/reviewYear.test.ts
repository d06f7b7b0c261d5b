import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { duckdbSampleStore } from '../../src/adapters/duckdb/index.ts';
import type { Finding } from '../../src/core/faults/index.ts';
import { readInstrument } from '../../src/core/instrument/index.ts';
import type { Sample } from '../../src/core/record/index.ts';
import { turnBetween } from '../../src/core/units/index.ts';
import { HeadingSum, type BlockMean } from '../../src/core/wind/index.ts';
import type { Damage } from '../support/damage.ts';
import { DAY_MS, day } from '../support/faultRuns.ts';
import { plannedHead } from '../support/plannedHead.ts';
import { ownFolder, vanewright } from '../support/runCli.ts';
import { textOf } from '../support/sourceFiles.ts';
import { vaneYear } from '../support/vaneYear.ts';

/** Five things that break in a year, each mended again. */
const damages: readonly Damage[] = [
  { kind: 'frozen-vane', fromMs: day('01-20'), untilMs: day('01-22') },
  { kind: 'stuck-channel', channel: 3, level: '1', fromMs: day('03-10'), untilMs: day('03-24') },
  { kind: 'seized-cups', fromMs: day('05-05'), untilMs: day('05-19') },
  { kind: 'ambient-leak', share: 0.3, fromMs: day('07-01'), untilMs: day('07-15') },
  { kind: 'lost-power', fromMs: day('10-01'), untilMs: day('10-12') },
];

/** The jetty with calibrated cups and a place, as its maker would write it. */
function jettyFile(): string {
  return textOf('examples/jetty/instrument.yaml')
    .replace('  quietUs: 1500\n', '  quietUs: 1500\n  runPerPulseM: 0.6\n  startSpeedMPerS: 0.5\n')
    .replace('\nsite:\n', '\nsite:\n  latitudeDeg: 54\n  longitudeDeg: 10\n');
}

/** What `review --json` says, as far as it is looked at here. */
interface Told {
  readonly findings: readonly Finding[];
  readonly whole: {
    readonly speed: BlockMean;
    readonly headingDeg: number;
    readonly headingWithinDeg: number;
  };
}

const SAMPLES_AT_ONCE = 40_000;
/** Calm threshold of the review: what the vane needs to start. [m/s] */
const CALM_M_PER_S = 0.5;

let own: ReturnType<typeof ownFolder>;
const path = (name: string): string => join(own.path, name);
/** What the wind truly was. [m/s], [deg] */
const truth = { speeds: 0, count: 0, heading: new HeadingSum() };

/** Fills a store with the damaged year, a sample a minute, and remembers the wind. */
async function fillYear(): Promise<void> {
  const { instrument } = readInstrument(readFileSync(path('jetty.yaml'), 'utf8'), 'jetty.yaml');
  const [fromMs, untilMs] = [day('01-01'), day('01-01') + 365 * DAY_MS];
  const store = await duckdbSampleStore(path('store/record.duckdb'));
  let samples: Sample[] = [];
  let seq = 0;
  const commit = async (): Promise<void> => {
    await store.commit({ samples, ledger: [], progress: { log: 'invented', seq: ++seq, state: '' } });
    samples = [];
  };
  const year = { instrument, head: plannedHead(instrument), seed: 31, fromMs, untilMs, stepMs: 60_000 };
  for (const { sample, truth: wind } of vaneYear({ ...year, damages })) {
    truth.speeds += wind.speedMPerS;
    truth.count++;
    if (wind.speedMPerS >= CALM_M_PER_S) truth.heading.add(wind.headingDeg);
    samples.push(sample);
    if (samples.length === SAMPLES_AT_ONCE) await commit();
  }
  await commit();
  await store.close();
}

beforeAll(async () => {
  own = ownFolder();
  writeFileSync(path('jetty.yaml'), jettyFile());
  mkdirSync(path('store'));
  await fillYear();
});
afterAll(() => own.end());

it('names five faults of a year with their dates, blames nothing else, and keeps its means true', () => {
  const words = ['--store', path('store'), '--out', path('out'), '--json'];
  const said = vanewright('review', path('jetty.yaml'), ...words);
  expect(said.exit).toBe(1); // the instrument falls short, and the review says so
  const { findings, whole } = JSON.parse(said.out) as Told;
  expect(findings.map(({ kind }) => kind)).toEqual(damages.map(({ kind }) => kind));
  const page = readFileSync(path('out/review.html'), 'utf8');
  for (const [i, { sinceMs, untilMs, title }] of findings.entries()) {
    expect(Math.abs(sinceMs - damages[i]!.fromMs)).toBeLessThan(DAY_MS);
    expect(Math.abs(untilMs! - damages[i]!.untilMs)).toBeLessThan(DAY_MS);
    expect(page).toContain(title);
    expect(page).toContain(new Date(sinceMs).toISOString().slice(0, 16).replace('T', ' '));
  }
  const speed = truth.speeds / truth.count;
  const { low, high } = whole.speed.interval!;
  expect(low).toBeLessThan(speed);
  expect(high).toBeGreaterThan(speed);
  expect(high - low).toBeLessThan(0.3 * speed);
  const off = turnBetween(whole.headingDeg, truth.heading.mean().headingDeg!);
  expect(Math.abs(off)).toBeLessThan(whole.headingWithinDeg);
  expect(whole.headingWithinDeg).toBeLessThan(15);
});
