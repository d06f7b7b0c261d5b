import normalQuantile from '@stdlib/stats-base-dists-normal-quantile';
import { describe, expect, it } from 'vitest';
import { windSeries } from '../../../../test/support/windSeries.ts';
import { roseOf } from './rose.ts';
import { RoseSum, type RoseLayout } from './roseSum.ts';
import type { EqualWeight } from './stratum.ts';

const HOUR = 3_600_000;
const WEEK = 168 * HOUR;

const layout = (equalWeight: EqualWeight, count = 8): RoseLayout => ({
  sectors: { count, firstCentreDeg: 0 },
  speedBoundsMPerS: [4],
  calmBelowMPerS: 0.5,
  equalWeight,
  utcOffsetMin: 0,
});

describe('a rose', () => {
  it('adds up to 1 with its calms, and each petal to its classes', () => {
    const sum = new RoseSum(layout('hour', 36));
    for (const { atMs, headingDeg, speedMPerS } of windSeries({
      seed: 1,
      count: 2000,
      intervalMs: HOUR,
      memory: 9,
    })) {
      sum.add(atMs, headingDeg, speedMPerS, 5.625);
    }
    const { petals, calm } = roseOf(sum);
    expect(petals.reduce((all, { share }) => all + share, calm!.share)).toBeCloseTo(1, 12);
    for (const { share, byClass } of petals)
      expect(byClass.reduce((a, b) => a + b, 0)).toBeCloseTo(share, 12);
    expect(calm!.share).toBeGreaterThan(0);
  });

  it('has no confidence in less than two weeks, and none to give in one sample', () => {
    const sum = new RoseSum(layout('reading'));
    sum.add(HOUR, 90, 5);
    const [, , east] = roseOf(sum).petals;
    expect(east).toMatchObject({ share: 1, interval: null, bounds: null, centreDeg: 90 });
  });

  it('is all calm when the air is', () => {
    const sum = new RoseSum(layout('reading'));
    for (let i = 0; i < 400; i++) sum.add(i * HOUR, 0, 0);
    const { petals, calm } = roseOf(sum, 400);
    expect(calm!.share).toBe(1);
    expect(petals.every(({ share }) => share === 0)).toBe(true);
    expect(calm!.interval!.high).toBe(1);
    expect(calm!.interval!.low).toBeLessThan(0.6); // three weeks of calm do not promise calm for ever
  });

  it('states what the missing time could have held', () => {
    const sum = new RoseSum(layout('reading'));
    for (let i = 0; i < 60; i++) sum.add(i * HOUR, i < 30 ? 90 : 180, 5);
    const rose = roseOf(sum, 100);
    expect(rose.coverage).toBe(0.6);
    expect(rose.petals[2]!.bounds!.low).toBeCloseTo(0.3, 12);
    expect(rose.petals[2]!.bounds!.high).toBeCloseTo(0.7, 12);
    expect(rose.petals[0]!.bounds).toEqual({ low: 0, high: 0.4 });
  });

  it('needs something to expect', () => {
    const sum = new RoseSum(layout('reading'));
    sum.add(0, 90, 5);
    expect(() => roseOf(sum, 0)).toThrow('wind/bad-reading');
    expect(() => roseOf(new RoseSum(layout('reading')))).toThrow('wind/no-readings');
  });
});

describe('hours that count the same in spite of gaps', () => {
  // East by day, west by night; the logger slept through most nights.
  const sumOf = (weight: EqualWeight): RoseSum => {
    const sum = new RoseSum(layout(weight));
    for (let hour = 0; hour < 8 * 168; hour++) {
      const isDay = hour % 24 >= 6 && hour % 24 < 18;
      if (isDay || hour % 72 < 24) sum.add(hour * HOUR, isDay ? 90 : 270, 5);
    }
    return sum;
  };

  it('give back the half that the gaps took from the night', () => {
    expect(roseOf(sumOf('reading')).petals[6]!.share).toBeLessThan(0.3);
    const fair = roseOf(sumOf('hour'));
    expect(fair.petals[6]!.share).toBeCloseTo(0.5, 12);
    expect(fair.petals[2]!.byClass[1]).toBeCloseTo(0.5, 12);
    expect(fair.emptyStrata).toBe(0);
  });

  it('say how many of them have no reading at all', () => {
    const sum = new RoseSum(layout('hour'));
    for (let hour = 0; hour < 500; hour++) if (hour % 24 < 20) sum.add(hour * HOUR, 90, 5);
    expect(roseOf(sum).emptyStrata).toBe(4);
    expect(roseOf(sum).petals[2]!.share).toBeCloseTo(1, 12);
  });
});

describe('the confidence of a petal', () => {
  // True shares of the invented wind: headings 230° + 70° times a normal variable.
  const truth = Array<number>(9).fill(0);
  for (let i = 0; i < 20_000; i++) {
    const heading = 230 + 70 * normalQuantile((i + 0.5) / 20_000, 0, 1);
    truth[((Math.floor((heading + 22.5) / 45) % 8) + 8) % 8]! += 1 / 20_000;
  }

  it.each(['reading', 'hour'] as const)(
    'holds the truth in about 95 of 100 cases, weighted by %s',
    (weight) => {
      let [held, all, widest] = [0, 0, 0];
      for (let record = 0; record < 60; record++) {
        const sum = new RoseSum(layout(weight));
        const samples = windSeries({ seed: 100 + record, count: 20 * 168, intervalMs: HOUR, memory: 24 });
        // No calms here: the truth above counts every heading.
        for (const { atMs, headingDeg } of samples) sum.add(atMs, headingDeg, 5);
        roseOf(sum).petals.forEach(({ interval }, sector) => {
          all++;
          if (interval!.low <= truth[sector]! && truth[sector]! <= interval!.high) held++;
          widest = Math.max(widest, interval!.high - interval!.low);
        });
      }
      expect(held / all).toBeGreaterThan(0.9);
      expect(held / all).toBeLessThan(0.99);
      expect(widest).toBeLessThan(0.4);
    },
  );

  it('does not grow with samples that only follow each other faster', () => {
    const width = (perHour: number): number => {
      const sum = new RoseSum(layout('reading'));
      for (const { atMs, headingDeg } of windSeries({
        seed: 9,
        count: 10 * 168,
        intervalMs: HOUR,
        memory: 24,
      })) {
        for (let i = 0; i < perHour; i++) sum.add(atMs + (i * HOUR) / perHour, headingDeg, 5);
      }
      const { low, high } = roseOf(sum).petals[5]!.interval!;
      return high - low;
    };
    expect(width(60)).toBeCloseTo(width(1), 9);
  });

  it('is given as soon as there are two weeks, and is wide then', () => {
    const sum = new RoseSum(layout('reading'));
    sum.add(HOUR, 90, 5);
    sum.add(WEEK + HOUR, 180, 5);
    const { low, high } = roseOf(sum).petals[2]!.interval!;
    expect(high - low).toBeGreaterThan(0.8);
  });
});
