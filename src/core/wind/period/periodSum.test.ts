import { describe, expect, it } from 'vitest';
import { windSeries } from '../../../../test/support/windSeries.ts';
import { PeriodSum } from './periodSum.ts';

describe('a period of samples', () => {
  it('keeps calms, unread headings and unread speeds apart', () => {
    const sum = new PeriodSum(0.5);
    sum.add(1000, 350, 4);
    sum.add(2000, 10, 6);
    sum.add(3000, 200, 0.4); // calm: the vane rests somewhere
    sum.add(4000, null, 0.2); // calm: no heading needed
    sum.add(5000, null, 5); // wind, but the code could not be read
    sum.add(6000, 20, null); // heading, but no speed
    sum.add(7000, null, null);
    const summary = sum.summary();
    expect(summary).toMatchObject({
      samples: 7,
      speedReadings: 5,
      headingReadings: 5,
      bothReadings: 4,
      calms: 2,
    });
    expect(summary.speed!.meanMPerS).toBeCloseTo(15.6 / 5, 12);
    expect(summary.heading!.headingDeg).toBeCloseTo(6.7, 0); // of 350, 10 and 20; the calm's 200 is left out
    expect(summary.vector!.scalarSpeedMPerS).toBeCloseTo(10.6 / 4, 12);
    expect(summary.vector!.headingDeg).toBeCloseTo(2.0, 0); // of 4 m/s from 350 and 6 m/s from 10
  });

  it('says nothing about an empty period, and little about a flat calm', () => {
    expect(new PeriodSum(0.5).summary()).toEqual({
      samples: 0,
      speedReadings: 0,
      headingReadings: 0,
      bothReadings: 0,
      calms: 0,
      speed: null,
      heading: null,
      spreadDeg: null,
      unwrapped: null,
      vector: null,
    });
    const calm = new PeriodSum(0.5);
    calm.add(0, 90, 0);
    const summary = calm.summary();
    expect(summary.heading).toBeNull();
    expect(summary.vector!.headingDeg).toBeNull();
    expect(summary.headingReadings).toBe(1);
  });

  it('is the same of two sums joined', () => {
    const samples = windSeries({ seed: 5, count: 900, intervalMs: 1000, memory: 60 });
    const [a, b, whole] = [new PeriodSum(1), new PeriodSum(1), new PeriodSum(1)];
    samples.forEach(({ atMs, headingDeg, speedMPerS }, i) => {
      (i < 333 ? a : b).add(atMs, headingDeg, speedMPerS);
      whole.add(atMs, headingDeg, speedMPerS);
    });
    a.merge(b);
    const [joined, direct] = [a.summary(), whole.summary()];
    expect(joined.heading!.headingDeg).toBeCloseTo(direct.heading!.headingDeg!, 9);
    expect(joined.spreadDeg).toBeCloseTo(direct.spreadDeg!, 9);
    expect(joined.speed!.deviationMPerS).toBeCloseTo(direct.speed!.deviationMPerS, 9);
    expect(joined.vector!.steadiness).toBeCloseTo(direct.vector!.steadiness!, 9);
    expect(joined.calms).toBe(direct.calms);
  });

  it.each([
    [1000, 360, 5],
    [1000, 999, 5],
    [1000, -1, 5],
    [1000, NaN, 5],
    [1000, 10, NaN],
    [1000, 10, -99.99],
    [1000, 10, Infinity],
    [NaN, 10, 5],
  ])('refuses a sample at %f with heading %f and speed %f, and keeps none of it', (atMs, heading, speed) => {
    const sum = new PeriodSum(0.5);
    expect(() => sum.add(atMs, heading, speed)).toThrow('wind/bad-reading');
    expect(sum.summary().samples).toBe(0);
    expect(sum.summary().speed).toBeNull();
  });

  it('needs a threshold that is a speed', () => {
    expect(() => new PeriodSum(NaN)).toThrow('wind/bad-reading');
  });
});
