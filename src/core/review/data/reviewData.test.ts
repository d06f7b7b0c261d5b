import { expect, it } from 'vitest';
import { windSeries } from '../../../../test/support/windSeries.ts';
import { READ_HEADING, READ_SPEED } from '../../wind/index.ts';
import { RecordSum } from '../record.ts';
import { reviewOf, type Review } from '../review.ts';
import { reviewTables } from '../page/reviewTables.ts';
import { reviewData } from './reviewData.ts';

/** Three weeks of invented wind, one sample in ten minutes but for the first day. */
function review(isVane = false): Review {
  const choices = {
    sectors: 8,
    equalWeight: 'reading',
    utcOffsetMin: 0,
    calmBelowMPerS: 0.5,
    turnRateDegPerS: null,
    widths: { halfWidthOf: () => 5, leastDeg: 5, mostDeg: 6, source: 'drawn' },
  } as const;
  const record = new RecordSum(choices, 600_000, { findings: [], prints: [] });
  const wind = windSeries({ seed: 3, count: 21 * 144, intervalMs: 600_000, memory: 12 });
  record.addColumns({
    atMs: Float64Array.from(wind, ({ atMs }) => atMs),
    headingDeg: Float64Array.from(wind, ({ headingDeg }) => headingDeg),
    speedMPerS: Float64Array.from(wind, ({ speedMPerS }) => speedMPerS),
    read: new Uint8Array(wind.length).fill(isVane ? READ_HEADING : READ_HEADING | READ_SPEED),
  });
  record.end();
  const [fromMs, untilMs] = [record.sum.firstMs - 600_000, record.sum.lastMs];
  const subject = {
    name: 'jetty',
    station: 'jetty',
    fromMs,
    untilMs,
    northSigmaDeg: null,
    hasCalibration: false,
  };
  return reviewOf(record, subject, null);
}

const NUMBER = /^-?\d+(\.\d+)?(e[+-]?\d+)?$/;
const tableOf = (of: Review, wanted: string) => reviewData(of).find(({ name }) => name === wanted)!;

it.each([false, true])(
  'has plain numbers or nothing below every heading with a unit (vane alone: %s)',
  (isVane) => {
    for (const { name, headings, rows } of reviewData(review(isVane)).filter(
      ({ name: one }) => one !== 'columns',
    )) {
      for (const [i, heading] of headings.entries()) {
        if (!/\[.+\]$/.test(heading)) continue;
        const odd = rows.map((row) => row[i]!).filter((cell) => cell !== '' && !NUMBER.test(cell));
        expect(odd, `${name}: ${heading}`).toEqual([]);
      }
    }
  },
);

it('has every table of the page', () => {
  const names = new Set(reviewData(review()).map(({ name }) => name));
  const shown = reviewTables(review()).map(({ name }) => name);
  expect(shown.filter((name) => !names.has(name))).toEqual([]);
  expect(names).toContain('causes');
});

it('has the ends of an interval on either side of its mean', () => {
  const { headings, rows } = tableOf(review(), 'whole');
  const cell = (heading: string): number => Number(rows[0]![headings.indexOf(heading)]);
  expect(cell('mean speed, low [m/s]')).toBeLessThan(cell('mean speed [m/s]'));
  expect(cell('mean speed, high [m/s]')).toBeGreaterThan(cell('mean speed [m/s]'));
});

it('has shares of the rose that add up to one, calms with them', () => {
  const { headings, rows } = tableOf(review(), 'rose');
  const place = headings.indexOf('share [-]');
  expect(rows.reduce((sum, row) => sum + Number(row[place]), 0)).toBeCloseTo(1, 7);
});

it('says of every column of every table what it holds', () => {
  const tables = reviewData(review());
  const { rows } = tables.at(-1)!;
  const told = new Set(rows.map(([table, heading]) => `${table} ${heading}`));
  for (const { name, headings } of tables.slice(0, -1)) {
    expect(new Set(headings).size, name).toBe(headings.length);
    for (const heading of headings) expect(told).toContain(`${name}.csv ${heading}`);
  }
  expect(rows.every(([, , , meaning]) => meaning !== '')).toBe(true);
});
