import { describe, expect, it } from 'vitest';
import { windSeries } from '../../../../test/support/windSeries.ts';
import { seededRandom } from '../../units/index.ts';
import { BlockMeanSum } from './blockMean.ts';

const HOUR = 3_600_000;
const WEEK = 168 * HOUR;

describe('a mean over weeks', () => {
  it('of two weeks by hand', () => {
    const sum = new BlockMeanSum();
    sum.add(0, 4);
    sum.add(WEEK, 6);
    const { mean, standardError, interval, groups } = sum.result();
    expect([mean, groups]).toEqual([5, 2]);
    expect(standardError).toBeCloseTo(1, 12); // |6 - 4| / 2
    expect(interval!.high).toBeCloseTo(5 + 12.706, 3); // Student's factor of one degree of freedom
  });

  it('weighs values by their time', () => {
    const sum = new BlockMeanSum();
    sum.add(0, 4, 3);
    sum.add(HOUR, 8, 1);
    expect(sum.result()).toEqual({ mean: 5, standardError: null, interval: null, groups: 1 });
  });

  it('holds the truth in about 95 of 100 records of weather with a memory of a day', () => {
    let held = 0;
    for (let record = 0; record < 200; record++) {
      const sum = new BlockMeanSum();
      const samples = windSeries({ seed: 500 + record, count: 15 * 168, intervalMs: HOUR, memory: 24 });
      // A share below the mean has truth 1/2, whatever the shape of the speeds.
      for (const { atMs, speedMPerS } of samples) sum.add(atMs, speedMPerS < 5 ? 1 : 0);
      const { low, high } = sum.result().interval!;
      if (low <= 0.5 && 0.5 <= high) held++;
    }
    expect(held / 200).toBeGreaterThan(0.9);
    expect(held / 200).toBeLessThan(0.99);
  });

  it('rests on 25 groups however long the record is', () => {
    const sum = new BlockMeanSum();
    const random = seededRandom(4);
    for (let week = 0; week < 520; week++) sum.add(week * WEEK, random.normal());
    const { standardError, groups } = sum.result();
    expect(groups).toBe(25);
    expect(standardError! * Math.sqrt(520)).toBeGreaterThan(0.65);
    expect(standardError! * Math.sqrt(520)).toBeLessThan(1.45); // 1 in truth, known to 14 % from 25 groups
  });

  it('is the same of two sums joined', () => {
    const [a, b] = [new BlockMeanSum(), new BlockMeanSum()];
    a.add(0, 4);
    b.add(WEEK, 6);
    b.add(0, 5);
    a.merge(b);
    expect(a.result().mean).toBeCloseTo(5, 12);
    expect(a.result().groups).toBe(2);
  });

  it('needs values', () => {
    const sum = new BlockMeanSum();
    expect(() => sum.result()).toThrow('wind/no-readings');
    expect(() => sum.add(0, NaN)).toThrow('wind/bad-reading');
    expect(() => sum.add(NaN, 0)).toThrow('wind/bad-reading');
    expect(() => sum.add(0, 1, -1)).toThrow('wind/bad-reading');
  });
});
