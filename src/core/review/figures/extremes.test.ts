import { describe, expect, it } from 'vitest';
import { steadyPeriod, TEN_MS } from '../../../../test/support/reviewPeriods.ts';
import type { ReviewPeriod } from '../sum/reviewPeriod.ts';
import { extremesOf } from './extremes.ts';

/** Invented yearly maxima. [m/s] */
const MAXIMA = [21.4, 24.1, 19.8, 26.7, 22.3, 23.9, 20.5, 28.2, 22.8, 25.0, 21.1, 23.3];
/** One sample a day, so that a year needs few periods. [ms] */
const DAY_MS = 86_400_000;

/** Years of daily readings with one gust each that is the highest. [m/s] */
function years(maxima: readonly number[], more: Partial<ReviewPeriod> = {}): ReviewPeriod[] {
  return maxima.flatMap((most, i) => {
    const first = Date.UTC(2010 + i, 0);
    const count = (Date.UTC(2011 + i, 0) - first) / DAY_MS;
    return Array.from({ length: count }, (_, day) => {
      const endMs = first + day * DAY_MS + TEN_MS;
      const speedMPerS = day === 200 ? most : 0.6 * most;
      return steadyPeriod(
        endMs,
        { speedMPerS: speedMPerS / 2, readings: 1 },
        { gust: { speedMPerS, atMs: endMs }, ...more },
      );
    });
  });
}

describe('winds that come back', () => {
  it('are those that scipy has from the highest gust of each of twelve years', () => {
    // test/published/numpy-scipy/distributions.py: maximum likelihood by a root finder, quantiles by scipy.
    const [ten, twentyFive, fifty] = extremesOf(years(MAXIMA), DAY_MS);
    expect(ten!.level!.speedMPerS).toBeCloseTo(26.544608477, 6);
    expect(twentyFive!.level!.speedMPerS).toBeCloseTo(28.407025774, 6);
    expect(fifty!.level).toBeNull(); // beyond four times twelve years
    expect(fifty!.why).toContain('12 years of record; needed: up to 4 times');
  });

  it('come from the highest mean where the record has no gusts', () => {
    const [ten] = extremesOf(years(MAXIMA, { gust: null }), DAY_MS);
    expect(ten!.level!.speedMPerS).toBeCloseTo(26.544608477 / 2, 6); // a scale of speed is a scale of the distribution
  });

  it('are not given from less than ten complete years, and the reason is', () => {
    const short = extremesOf(years(MAXIMA.slice(0, 9)), DAY_MS);
    expect(short.map(({ level }) => level)).toEqual([null, null, null]);
    expect(short[0]!.why).toContain('9 complete years of 9');
    const holed = years(MAXIMA.slice(0, 10)).filter((_, i) => i > 60); // 17 % of the first year are missing
    expect(extremesOf(holed, DAY_MS)[0]!.why).toContain('9 complete years of 10');
  });
});
