import { describe, expect, it } from 'vitest';
import { windSeries } from '../../../../test/support/windSeries.ts';
import { slidingGust } from '../speed/gustSum.ts';
import { speedMoments } from '../speed/speedSum.ts';
import { PeriodStream, windPeriods } from './periodStream.ts';

const rule = { intervalMs: 1000, calmBelowMPerS: 0.5 };
const TEN = 600_000;

describe('a record cut into periods of ten minutes', () => {
  const samples = windSeries({ seed: 11, count: 1500, intervalMs: 1000, memory: 30 });
  const periods = [...windPeriods(samples, rule)];

  it('is labelled by the end, which belongs to it', () => {
    expect(periods.map(({ endMs }) => endMs)).toEqual([TEN, 2 * TEN, 3 * TEN]);
    expect(periods.map((period) => period.samples)).toEqual([600, 600, 300]);
  });

  it('has the moments of each period as if taken alone', () => {
    const second = samples.slice(600, 1200).map(({ speedMPerS }) => speedMPerS);
    expect(periods[1]!.speed).toEqual(speedMoments(second));
    const { meanMPerS, deviationMPerS } = periods[1]!.speed!;
    expect(periods[1]!.turbulenceIntensity).toBe(deviationMPerS / meanMPerS);
    expect(periods[1]!.gustFactor).toBe(periods[1]!.gust!.speedMPerS / meanMPerS);
  });

  it('has a gust whose 3 s may begin in the period before', () => {
    const withLead = samples.slice(598, 1200).map(({ speedMPerS }) => speedMPerS);
    expect(periods[1]!.gust!.speedMPerS).toBeCloseTo(slidingGust(withLead, 1000)!.speedMPerS, 9);
    expect(periods[1]!.gust!.atMs).toBeGreaterThan(TEN);
    expect(periods[1]!.gust!.atMs).toBeLessThanOrEqual(2 * TEN);
  });

  it('is complete with 75 % of the samples, for speed and direction apart', () => {
    expect(periods.map(({ speedIsComplete }) => speedIsComplete)).toEqual([true, true, false]);
    const some = samples.slice(0, 600).map((s, i) => ({ ...s, headingDeg: i % 2 ? s.headingDeg : null }));
    const [half] = [...windPeriods(some, rule)];
    expect(half!.speedIsComplete).toBe(true);
    expect(half!.headingIsComplete).toBe(false);
    expect(half!.completeness.speed).toBe(1);
  });

  it('makes up no period for a gap, and no gust across it', () => {
    const gappy = samples.filter((_, i) => i < 100 || i >= 1300);
    const found = [...windPeriods(gappy, rule)];
    expect(found.map(({ endMs }) => endMs)).toEqual([TEN, 3 * TEN]);
    const tail = samples.slice(1300).map(({ speedMPerS }) => speedMPerS);
    expect(found[1]!.gust!.speedMPerS).toBeCloseTo(slidingGust(tail, 1000)!.speedMPerS, 9);
  });

  it('has no gust where samples are minutes apart', () => {
    const [period] = [
      ...windPeriods([{ atMs: 60_000, headingDeg: 10, speedMPerS: 5 }], { ...rule, intervalMs: 60_000 }),
    ];
    expect(period!.gust).toBeNull();
    expect(period!.gustFactor).toBeNull();
    expect(period!.unwrapped!.caution).toBeNull();
  });

  it('is empty for an empty record', () => {
    expect([...windPeriods([], rule)]).toEqual([]);
    expect(new PeriodStream(rule).end()).toBeNull();
  });

  it('has no speed where there are no cups', () => {
    const [vaneOnly] = [...windPeriods([{ atMs: 1000, headingDeg: 200, speedMPerS: null }], rule)];
    expect(vaneOnly).toMatchObject({ speed: null, gust: null, turbulenceIntensity: null, vector: null });
    expect(vaneOnly!.heading!.headingDeg).toBeCloseTo(200, 9);
  });

  it('keeps the period begun when a sample is refused', () => {
    const stream = new PeriodStream(rule);
    stream.add(1000, 10, 5);
    expect(() => stream.add(700_000, 999, 5)).toThrow('wind/bad-reading');
    expect(() => stream.add(1000, 10, 5)).toThrow('wind/time-not-rising');
    expect(() => stream.add(NaN, 10, 5)).toThrow('wind/bad-reading');
    expect(stream.add(700_000, 10, 5)!.samples).toBe(1);
  });

  it('needs an interval and a period', () => {
    expect(() => new PeriodStream({ ...rule, intervalMs: 0 })).toThrow('wind/bad-reading');
    expect(() => new PeriodStream({ ...rule, periodMs: -1 })).toThrow('wind/bad-reading');
  });
});
