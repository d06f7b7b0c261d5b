import { describe, expect, it } from 'vitest';
import { windSeries } from '../../../../test/support/windSeries.ts';
import { wrapDegrees } from '../../units/index.ts';
import {
  PeriodStream,
  READ_HEADING,
  READ_SPEED,
  roseOf,
  RoseSum,
  type RoseLayout,
  type SampleColumns,
} from '../../wind/index.ts';
import { ReviewSum } from './reviewSum.ts';
import { sampleIntervalMs } from './sampleInterval.ts';

const STEP_DEG = 11.25;
const BOUNDS = [2, 4, 6, 8];

/** Invented wind on a disc of 32 positions, with unread parts and gaps. */
function columns(count: number, isFine = false): SampleColumns {
  const all = windSeries({ seed: 9, count, intervalMs: 1000, memory: 120 }).filter((_, i) => i % 5000 < 4700);
  return {
    atMs: Float64Array.from(all, ({ atMs }) => atMs),
    headingDeg: Float64Array.from(all, ({ headingDeg }) =>
      isFine ? headingDeg : wrapDegrees(Math.round(headingDeg / STEP_DEG) * STEP_DEG),
    ),
    speedMPerS: Float64Array.from(all, ({ speedMPerS }) => Math.round(10 * speedMPerS) / 10),
    read: Uint8Array.from(all, (_, i) => (i % 97 < 3 ? 0 : READ_HEADING) | (i % 89 < 4 ? 0 : READ_SPEED)),
  };
}

const layout = (speedBoundsMPerS: readonly number[] | null): RoseLayout => ({
  sectors: { count: 16, firstCentreDeg: 0 },
  speedBoundsMPerS,
  calmBelowMPerS: 0.5,
  equalWeight: 'reading',
  utcOffsetMin: 0,
});

const part = (all: SampleColumns, from: number, to: number): SampleColumns => ({
  atMs: all.atMs.subarray(from, to),
  headingDeg: all.headingDeg.subarray(from, to),
  speedMPerS: all.speedMPerS.subarray(from, to),
  read: all.read.subarray(from, to),
});

/** The sum of columns, handed over in pieces. */
function summed(all: SampleColumns, piece: number, halfWidthDeg: number) {
  const wind = new RoseSum(layout(BOUNDS));
  const sum = new ReviewSum(
    {
      intervalMs: 1000,
      calmBelowMPerS: 0.5,
      speedBoundsMPerS: BOUNDS,
      utcOffsetMin: 0,
      halfWidthOf: () => halfWidthDeg,
    },
    { wind: [wind], vane: new RoseSum(layout(null)) },
  );
  for (let from = 0; from < all.atMs.length; from += piece) sum.addColumns(part(all, from, from + piece));
  sum.end();
  return { sum, rose: roseOf(wind) };
}

describe('a review’s sum', () => {
  const all = columns(40_000);

  it.each([1009, 7777, 1e6])('gives the periods of the wind arithmetic, in pieces of %i', (piece) => {
    const { sum } = summed(all, piece, STEP_DEG / 2);
    const stream = new PeriodStream({ intervalMs: 1000, calmBelowMPerS: 0.5 });
    const periods = [...stream.addColumns(all), stream.end()!];
    expect(sum.periods).toHaveLength(periods.length);
    periods.forEach((period, i) => {
      const mine = sum.periods[i]!;
      const { samples, speedReadings, headingReadings, bothReadings, calms } = period;
      const counts = { samples, speedReadings, headingReadings, bothReadings, calms };
      expect(mine).toMatchObject({ endMs: period.endMs, ...counts });
      expect(mine.gust!.atMs).toBe(period.gust!.atMs);
      expect(mine.gust!.speedMPerS).toBeCloseTo(period.gust!.speedMPerS, 11);
      const length = Math.hypot(mine.north, mine.east) / (headingReadings - calms);
      expect(length).toBeCloseTo(period.heading!.agreement, 11);
      expect(mine.meanMPerS).toBeCloseTo(period.speed!.meanMPerS, 11);
      expect(mine.deviationMPerS).toBeCloseTo(period.speed!.deviationMPerS, 11);
      expect(mine.meanCube).toBeCloseTo(period.speed!.meanCube, 9);
      expect(-mine.windEast / bothReadings).toBeCloseTo(period.vector!.eastwardMPerS, 11);
      expect(-mine.windNorth / bothReadings).toBeCloseTo(period.vector!.northwardMPerS, 11);
    });
  });

  it('fills the rose as sample by sample does', () => {
    const { rose } = summed(all, 5000, STEP_DEG / 2);
    const plain = new RoseSum(layout(BOUNDS));
    plain.addColumns(all, STEP_DEG / 2);
    const expected = roseOf(plain);
    expect(rose.calm!.readings).toBe(expected.calm!.readings);
    expect(rose.withoutHeading).toBe(expected.withoutHeading);
    rose.petals.forEach((petal, i) => {
      expect(petal.share).toBeCloseTo(expected.petals[i]!.share, 12);
      petal.byClass.forEach((share, c) => expect(share).toBeCloseTo(expected.petals[i]!.byClass[c]!, 12));
    });
  });

  it('takes headings that are no positions to within a hundredth of a degree', () => {
    const fine = columns(5000, true);
    const { sum } = summed(fine, 1000, 0);
    const stream = new PeriodStream({ intervalMs: 1000, calmBelowMPerS: 0.5 });
    const periods = [...stream.addColumns(fine), stream.end()!];
    periods.forEach(({ heading, headingReadings, calms }, i) => {
      const { north, east } = sum.periods[i]!;
      expect(Math.hypot(north, east) / (headingReadings - calms)).toBeCloseTo(heading!.agreement, 4);
    });
  });

  it('refuses samples out of order, and takes nothing in', () => {
    const { sum } = summed(part(all, 0, 100), 100, 0);
    expect(() => sum.addColumns(part(all, 50, 60))).toThrow('wind/time-not-rising');
    expect(sum.samples).toBe(100);
  });
});

describe('the time between two samples', () => {
  it('is what most of them keep', () => {
    expect(sampleIntervalMs(Float64Array.of(0, 1000, 2000, 90_000, 91_000, 92_001))).toBe(1000);
  });

  it('is not known from one sample', () => {
    expect(sampleIntervalMs(Float64Array.of(5))).toBeNull();
  });
});
