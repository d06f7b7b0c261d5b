import { describe, expect, it } from 'vitest';
import { windSeries } from '../../../../test/support/windSeries.ts';
import { GUST_WINDOW_MS, GustSum, slidingGust } from './gustSum.ts';

const rule = { intervalMs: 1000, windowMs: GUST_WINDOW_MS };

function gustOf(samples: readonly (readonly [second: number, speed: number])[]) {
  const sum = new GustSum(rule);
  for (const [second, speed] of samples) sum.add(second * 1000, speed);
  return sum.highest();
}

describe('the 3 s gust', () => {
  it('is the highest mean of three samples at 1 Hz, at the end of the third', () => {
    expect(slidingGust([1, 2, 9, 3, 6, 1], 1000)).toEqual({ speedMPerS: 6, atMs: 4000 });
  });

  it('is not the highest sample, and needs three of them', () => {
    expect(slidingGust([9, 9], 1000)).toBeNull();
    expect(slidingGust([3, 9, 3], 1000)!.speedMPerS).toBe(5);
  });

  it('does not reach across a gap', () => {
    expect(
      gustOf([
        [0, 1],
        [1, 1],
        [2, 1],
        [3, 9],
        [6, 9],
        [7, 1],
        [8, 1],
      ])!.speedMPerS,
    ).toBeCloseTo(11 / 3, 12);
    expect(
      gustOf([
        [0, 9],
        [1, 9],
        [5, 9],
        [6, 9],
        [10, 9],
      ]),
    ).toBeNull();
  });

  it('is not higher for a window that has only begun', () => {
    // At 4 Hz nine samples of twelve would do, but not the first nine of a record, which cover 2 s.
    const speeds = [...Array<number>(9).fill(9), ...Array<number>(12).fill(0)];
    expect(slidingGust(speeds, 250)!.speedMPerS).toBeLessThan(9);
  });

  it('stands with two samples of twelve missing', () => {
    const sum = new GustSum({ intervalMs: 250, windowMs: GUST_WINDOW_MS });
    for (let i = 0; i < 12; i++) if (i !== 4 && i !== 7) sum.add(i * 250, 6);
    expect(sum.highest()!.speedMPerS).toBe(6);
  });

  it('takes in samples that bunch closer than the interval says', () => {
    const sum = new GustSum(rule);
    for (let i = 0; i < 100; i++) sum.add(i * 100, i < 70 ? 2 : 4);
    expect(sum.highest()!.speedMPerS).toBeCloseTo(4, 9); // the last 3 s hold thirty samples of 4
  });

  it('reaches back into the period before, but is counted in the one where it ends', () => {
    const sum = new GustSum(rule);
    for (const [i, speed] of [1, 1, 1, 8].entries()) sum.add(i * 1000, speed);
    expect(sum.take()!.speedMPerS).toBeCloseTo(10 / 3, 12);
    sum.add(4000, 8);
    expect(sum.take()!.speedMPerS).toBeCloseTo(17 / 3, 12);
    expect(sum.take()).toBeNull();
  });

  it('agrees with adding up every window afresh, and with sums joined anywhere', () => {
    const samples = windSeries({ seed: 7, count: 400, intervalMs: 250, memory: 20 });
    const mean = (from: number): number =>
      samples.slice(from, from + 12).reduce((sum, { speedMPerS }) => sum + speedMPerS, 0) / 12;
    const highest = Math.max(...Array.from({ length: 389 }, (_, from) => mean(from)));
    for (const cut of [0, 1, 5, 11, 12, 13, 200, 395, 400]) {
      const [a, b] = [new GustSum({ ...rule, intervalMs: 250 }), new GustSum({ ...rule, intervalMs: 250 })];
      samples.forEach(({ atMs, speedMPerS }, i) => (i < cut ? a : b).add(atMs, speedMPerS));
      a.merge(b);
      expect(a.highest()!.speedMPerS).toBeCloseTo(highest, 9);
    }
  });

  it('goes on after a join as if there had been none', () => {
    const samples = windSeries({ seed: 8, count: 60, intervalMs: 1000, memory: 10 });
    const [whole, a, b] = [new GustSum(rule), new GustSum(rule), new GustSum(rule)];
    samples.forEach(({ atMs, speedMPerS }, i) => {
      if (i < 50) whole.add(atMs, speedMPerS);
      if (i < 50) (i < 20 ? a : b).add(atMs, speedMPerS);
    });
    a.merge(b);
    const running = (sum: GustSum) =>
      samples.slice(50).map(({ atMs, speedMPerS }) => sum.add(atMs, speedMPerS));
    const [joined, direct] = [running(a), running(whole)];
    joined.forEach((mean, i) => expect(mean).toBeCloseTo(direct[i]!, 9));
    expect(a.highest()!.atMs).toBe(whole.highest()!.atMs);
  });

  it('cannot be told from samples slower than 3 s', () => {
    expect(() => slidingGust([1, 2], 3001)).toThrow('wind/bad-setting');
    expect(() => slidingGust([1, 2], 0)).toThrow('wind/bad-setting');
    expect(slidingGust([1, 4, 2], 3000)).toEqual({ speedMPerS: 4, atMs: 3000 });
  });

  it('takes speeds in order of time, and joins only sums of one rule', () => {
    const sum = new GustSum(rule);
    sum.add(1000, 1);
    expect(() => sum.add(1000, 1)).toThrow('wind/time-not-rising');
    expect(() => sum.add(2000, NaN)).toThrow('wind/bad-reading');
    expect(() => sum.add(NaN, 1)).toThrow('wind/bad-reading');
    expect(() => sum.merge(new GustSum({ ...rule, intervalMs: 500 }))).toThrow('wind/different-layout');
  });
});
