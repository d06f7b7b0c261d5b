import { describe, expect, it } from 'vitest';
import { gumbelFit, gumbelReturn } from './gumbel.ts';
import { returnLevel } from './returnLevel.ts';

const speeds = [21.4, 24.1, 19.8, 26.7, 22.3, 23.9, 20.5, 28.2, 22.8, 25.0, 21.1, 23.3];
const years = speeds.map((mostMPerS, i) => ({ year: 2010 + i, mostMPerS, coverage: 0.97 }));

describe('the wind of many years', () => {
  it('is that of the fitted distribution, with an interval', () => {
    const level = returnLevel(years, 48);
    expect(level.speedMPerS).toBe(gumbelReturn(gumbelFit(speeds), 48, 12).speedMPerS);
    expect(level.interval.high - level.speedMPerS).toBeCloseTo(2.201 * level.standardErrorMPerS, 2); // t of 11
    expect(level.leftOut).toEqual([]);
    expect(level.years.length).toBe(12);
  });

  it('leaves out a year that was half missing', () => {
    const holed = years.map((year) => (year.year === 2013 ? { ...year, coverage: 0.5 } : year));
    const level = returnLevel(holed, 20);
    expect(level.leftOut).toEqual([2013]);
    expect(level.speedMPerS).toBeLessThan(returnLevel(years, 20).speedMPerS);
  });

  it('is refused for a record of nine years, and says what to do', () => {
    expect(() => returnLevel(years.slice(0, 9), 20)).toThrowErrorMatchingInlineSnapshot(`
      [VanewrightError: wind/record-too-short: The record is too short to say how strong a rare wind is.
        where:   returnLevel(maxima)
        got:     9 complete years of 9
        allowed: 10 years or more, each with 90 % of its samples
        fix:     State the highest gust measured and its date instead, or use a station nearby with a long record.]
    `);
  });

  it('is refused beyond four times the record, with the longest that is not', () => {
    expect(() => returnLevel(years, 49)).toThrow('wind/return-too-long');
    expect(() => returnLevel(years, 49)).toThrow('Ask for 48 years or less');
    expect(() => returnLevel(years, 48)).not.toThrow();
  });

  it('needs numbers that can be', () => {
    expect(() => returnLevel(years, 1)).toThrow('wind/bad-reading');
    expect(() => returnLevel([{ year: 2010, mostMPerS: NaN, coverage: 1 }], 20)).toThrow('wind/bad-reading');
  });
});
