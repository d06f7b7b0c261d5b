import { describe, expect, it } from 'vitest';
import { steadyPeriod, TEN_MS } from '../../../../test/support/reviewPeriods.ts';
import type { ReviewPeriod } from '../sum/reviewPeriod.ts';
import { coverageOf } from './coverage.ts';

const DAY_MS = 86_400_000;
const PERIODS_A_DAY = 144;

/** Whole days at 1 Hz from an instant on. [ms UTC] */
const days = (fromMs: number, count: number, more: Partial<ReviewPeriod> = {}): ReviewPeriod[] =>
  Array.from({ length: count * PERIODS_A_DAY }, (_, i) => steadyPeriod(fromMs + (i + 1) * TEN_MS, {}, more));

const of = (periods: readonly ReviewPeriod[], fromMs: number, untilMs: number) =>
  coverageOf(periods, { fromMs, untilMs, intervalMs: 1000 });

const year = (number: number): number => Date.UTC(number, 0);

describe('coverage against the clock', () => {
  it('gives a sample at midnight to the day that ends there', () => {
    const { days: found } = of(days(year(2026), 1), year(2026), year(2026) + 2 * DAY_MS);
    expect(found.map(({ both }) => both)).toEqual([1, 0]);
  });

  it('expects the readings that the clock has, however few came', () => {
    const { whole, expected } = of(days(year(2026), 1), year(2026), year(2026) + 10 * DAY_MS);
    expect(expected).toBe(864_000);
    expect(whole).toEqual({ speed: 0.1, heading: 0.1, both: 0.1 });
  });

  it('calls a quarter complete from 90 % on: 81 days of the 90 from January to March 2026', () => {
    const quarters = (count: number) => of(days(year(2026), count), year(2026), Date.UTC(2026, 3)).quarters;
    expect(quarters(81)).toEqual([
      { name: '2026 Q1', speed: 0.9, heading: 0.9, both: 0.9, isComplete: true, isWhole: true },
    ]);
    expect(quarters(80)[0]!.isComplete).toBe(false);
  });

  it('counts the 29th of February: 82 of 91 days are 90.1 %, 81 are not enough', () => {
    const complete = (count: number): boolean =>
      of(days(year(2028), count), year(2028), Date.UTC(2028, 3)).quarters[0]!.isComplete;
    expect([81, 82].map(complete)).toEqual([false, true]);
  });

  it('asks for speed and direction together, not only for each', () => {
    const [quarter] = of(days(year(2026), 90, { bothReadings: 500 }), year(2026), Date.UTC(2026, 3)).quarters;
    expect(quarter).toMatchObject({ speed: 1, heading: 1, isComplete: false });
    expect(quarter!.both).toBeCloseTo(5 / 6, 12);
  });

  it('has a year in any four complete quarters in a row', () => {
    const from = Date.UTC(2026, 3);
    const through = days(from, 365);
    expect(of(through, from, Date.UTC(2027, 3)).hasCompleteYear).toBe(true);
    expect(of(through.slice(0, 265 * PERIODS_A_DAY), from, Date.UTC(2027, 3)).hasCompleteYear).toBe(false);
  });

  it('says of a quarter that it is not reviewed whole', () => {
    const [quarter] = of(days(year(2026), 10), year(2026), year(2026) + 10 * DAY_MS).quarters;
    expect(quarter).toMatchObject({ isWhole: false, isComplete: false });
    expect(quarter!.both).toBeCloseTo(1 / 9, 12);
  });
});
