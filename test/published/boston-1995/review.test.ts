import { readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { RecordSum, reviewOf } from '../../../src/core/review/index.ts';
import { READ_HEADING, READ_SPEED } from '../../../src/core/wind/index.ts';
import { reports } from './boston.ts';

const HOUR_MS = 3_600_000;
const HALF_WIDTH_DEG = 5;
const rows = readFileSync(new URL('./review.csv', import.meta.url), 'utf8')
  .trim()
  .split('\n')
  .slice(1)
  .map((line) => line.split(','));
const figures = new Map(rows.map(([name, value]) => [name!, Number(value)]));

function review() {
  const choices = {
    sectors: 16,
    equalWeight: 'reading',
    utcOffsetMin: 0,
    calmBelowMPerS: 0.5,
    turnRateDegPerS: null,
    widths: {
      halfWidthOf: () => HALF_WIDTH_DEG,
      leastDeg: HALF_WIDTH_DEG,
      mostDeg: HALF_WIDTH_DEG,
      source: 'drawn',
    },
  } as const;
  const record = new RecordSum(choices, HOUR_MS, { findings: [], prints: [] });
  record.addColumns({
    atMs: Float64Array.from(reports, (_, i) => (i + 1) * HOUR_MS),
    headingDeg: Float64Array.from(reports, ({ headingDeg }) => headingDeg % 360),
    speedMPerS: Float64Array.from(reports, ({ speedMPerS }) => speedMPerS),
    read: new Uint8Array(reports.length).fill(READ_HEADING | READ_SPEED),
  });
  record.end();
  const subject = {
    name: 'Boston',
    station: 'BOS',
    fromMs: 0,
    untilMs: reports.length * HOUR_MS,
    northSigmaDeg: null,
    hasCalibration: false,
  };
  return reviewOf(record, subject, null);
}

it('a review of a real day has the means that numpy has', () => {
  const { whole } = review();
  for (const name of [
    'headingDeg',
    'agreement',
    'spreadDeg',
    'vectorSpeedMPerS',
    'vectorHeadingDeg',
  ] as const) {
    expect(whole[name], name).toBeCloseTo(figures.get(name)!, 8);
  }
  expect(whole.speed!.mean).toBeCloseTo(figures.get('speedMPerS')!, 8);
  expect(whole.steadiness).toBeCloseTo(figures.get('steadiness')!, 8);
  expect(whole.windRunKm).toBeCloseTo(figures.get('windRunKm')!, 6);
});

it('its rose has the shares that numpy has, in every sector and speed class', () => {
  const { petals } = review().rose!;
  const sectors = rows.filter(([name]) => name!.startsWith('sector'));
  expect(petals).toHaveLength(sectors.length);
  for (const [i, [, ...classes]] of sectors.entries()) {
    // Brute force with a hundred thousand directions a report is right to 1e-5 of it.
    classes.forEach((share, c) => expect(petals[i]!.byClass[c]!, `${i}.${c}`).toBeCloseTo(Number(share), 4));
  }
});
