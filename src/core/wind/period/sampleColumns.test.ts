import { describe, expect, it } from 'vitest';
import { windSeries } from '../../../../test/support/windSeries.ts';
import { seededRandom } from '../../units/index.ts';
import { roseOf } from '../rose/rose.ts';
import { RoseSum, type RoseLayout } from '../rose/roseSum.ts';
import { PeriodStream, type WindPeriod } from './periodStream.ts';
import { READ_HEADING, READ_SPEED, type SampleColumns } from './sampleColumns.ts';
import type { WindSample } from './windSample.ts';

const rule = { intervalMs: 1000, calmBelowMPerS: 0.5 };

/** Half an hour and more at 1 Hz, with calms, gaps, unread headings and unread speeds strewn in. */
function messy(seed: number): WindSample[] {
  const random = seededRandom(seed);
  return windSeries({ seed, count: 2500, intervalMs: 1000, memory: 25 })
    .filter((_, i) => !(i > 700 && i < 720) && random.uniform() > 0.02)
    .map(({ atMs, headingDeg, speedMPerS }) => ({
      atMs,
      headingDeg: random.uniform() < 0.05 ? null : headingDeg,
      speedMPerS: random.uniform() < 0.05 ? null : Math.max(0, speedMPerS - 1.5),
    }));
}

function columnsOf(samples: readonly WindSample[]): SampleColumns {
  return {
    atMs: Float64Array.from(samples, ({ atMs }) => atMs),
    headingDeg: Float64Array.from(samples, ({ headingDeg }) => headingDeg ?? NaN),
    speedMPerS: Float64Array.from(samples, ({ speedMPerS }) => speedMPerS ?? -99.99),
    read: Uint8Array.from(
      samples,
      (s) => (s.headingDeg === null ? 0 : READ_HEADING) + (s.speedMPerS === null ? 0 : READ_SPEED),
    ),
  };
}

/** Every number of a period to ten digits, so that only rounding may differ. */
function rounded(period: WindPeriod): unknown {
  return JSON.parse(
    JSON.stringify(period, (_, value: unknown) =>
      typeof value === 'number' ? Number(value.toPrecision(10)) : value,
    ),
  );
}

describe('samples side by side', () => {
  it.each([1, 2, 3])('give the periods that they give one by one, however they are cut (%i)', (seed) => {
    const samples = messy(seed);
    const single = new PeriodStream(rule);
    const expected = samples.flatMap((s) => single.add(s.atMs, s.headingDeg, s.speedMPerS) ?? []);
    expected.push(single.end()!);
    for (const size of [samples.length, 1000, 600, 7, 2, 1]) {
      const stream = new PeriodStream(rule);
      const periods: WindPeriod[] = [];
      for (let from = 0; from < samples.length; from += size) {
        periods.push(...stream.addColumns(columnsOf(samples.slice(from, from + size))));
      }
      periods.push(stream.end()!);
      expect(periods.map(rounded)).toEqual(expected.map(rounded));
    }
  });

  it('may be mixed with single samples', () => {
    const samples = messy(4);
    const [single, mixed] = [new PeriodStream(rule), new PeriodStream(rule)];
    const expected = samples.flatMap((s) => single.add(s.atMs, s.headingDeg, s.speedMPerS) ?? []);
    const found = samples.slice(0, 100).flatMap((s) => mixed.add(s.atMs, s.headingDeg, s.speedMPerS) ?? []);
    found.push(...mixed.addColumns(columnsOf(samples.slice(100, 1500))));
    found.push(...samples.slice(1500).flatMap((s) => mixed.add(s.atMs, s.headingDeg, s.speedMPerS) ?? []));
    expect(found.map(rounded)).toEqual(expected.map(rounded));
    expect(rounded(mixed.end()!)).toEqual(rounded(single.end()!));
  });

  it('give the rose that they give one by one, each with its own width', () => {
    const layout: RoseLayout = {
      sectors: { count: 36, firstCentreDeg: 0 },
      speedBoundsMPerS: [2, 4],
      calmBelowMPerS: 0.5,
      equalWeight: 'hour-of-season',
      utcOffsetMin: 60,
    };
    // Spread over five weeks, so that hours, seasons and weeks change on the way.
    const samples = messy(5).map((sample) => ({ ...sample, atMs: sample.atMs * 1200 }));
    const widths = Float64Array.from(samples, (_, i) => (i % 4) * 3);
    const [single, columns] = [new RoseSum(layout), new RoseSum(layout)];
    samples.forEach((s, i) => single.add(s.atMs, s.headingDeg, s.speedMPerS, widths[i]));
    columns.addColumns(columnsOf(samples), widths);
    expect(columns.cells).toEqual(single.cells);
    expect(columns.groupCells).toEqual(single.groupCells);
    expect(roseOf(columns)).toEqual(roseOf(single));
  });

  it('need no speeds where there are no cups', () => {
    const layout: RoseLayout = {
      sectors: { count: 8, firstCentreDeg: 0 },
      speedBoundsMPerS: null,
      calmBelowMPerS: 0,
      equalWeight: 'reading',
      utcOffsetMin: 0,
    };
    const sum = new RoseSum(layout);
    sum.addColumns(columnsOf([{ atMs: 1000, headingDeg: 90, speedMPerS: null }]), 5);
    expect(roseOf(sum).petals[2]!.share).toBe(1);
  });

  it('are refused before anything is taken in', () => {
    const stream = new PeriodStream(rule);
    const good = [1, 2, 3].map((second) => ({ atMs: second * 1000, headingDeg: 10, speedMPerS: 5 }));
    const bad = (change: Partial<WindSample>) => columnsOf([...good.slice(0, 2), { ...good[2]!, ...change }]);
    expect(() => stream.addColumns(bad({ headingDeg: 360 }))).toThrow('wind/bad-reading');
    expect(() => stream.addColumns(bad({ headingDeg: NaN }))).toThrow('wind/bad-reading');
    expect(() => stream.addColumns(bad({ speedMPerS: NaN }))).toThrow('wind/bad-reading');
    expect(() => stream.addColumns(bad({ atMs: NaN }))).toThrow('wind/bad-reading');
    expect(() => stream.addColumns(bad({ atMs: 2000 }))).toThrow('wind/time-not-rising');
    expect(() => stream.addColumns({ ...columnsOf(good), read: new Uint8Array(2) })).toThrow(
      'wind/unequal-lengths',
    );
    expect(stream.end()).toBeNull();
    expect(stream.addColumns(columnsOf(good))).toEqual([]);
    expect(() => stream.addColumns(columnsOf(good))).toThrow('wind/time-not-rising');
    expect(stream.end()!.samples).toBe(3);
  });

  it('need as many widths as samples', () => {
    const sum = new RoseSum({
      sectors: { count: 8, firstCentreDeg: 0 },
      speedBoundsMPerS: [4],
      calmBelowMPerS: 0,
      equalWeight: 'reading',
      utcOffsetMin: 0,
    });
    const columns = columnsOf([{ atMs: 1000, headingDeg: 90, speedMPerS: 5 }]);
    expect(() => sum.addColumns(columns, new Float64Array(2))).toThrow('wind/unequal-lengths');
    expect(() => sum.addColumns(columns, 181)).toThrow('wind/bad-reading');
  });
});
