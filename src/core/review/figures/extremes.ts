import { VanewrightError } from '../../error/index.ts';
import { returnLevel, type ReturnLevel, type YearMaximum } from '../../wind/index.ts';
import type { ReviewPeriod } from '../sum/reviewPeriod.ts';
import { grouped } from './grouped.ts';

/** Return periods that are asked. [a] */
const RETURNS = [10, 25, 50];

/** A return level, or why the record cannot give it. */
export interface Extreme {
  /** [a] */
  readonly returnYears: number;
  readonly level: ReturnLevel | null;
  /** `null` where there is a level. */
  readonly why: string | null;
}

/** Highest gust of each calendar year of UTC, or highest mean where the record has no gusts, with its coverage. */
function yearMaxima(periods: readonly ReviewPeriod[], intervalMs: number): YearMaximum[] {
  const hasGusts = periods.some(({ gust }) => gust !== null);
  const years = grouped(periods, ({ endMs }) => new Date(endMs - 1).getUTCFullYear());
  return [...years]
    .sort(([a], [b]) => a - b)
    .map(([year, own]) => {
      const expected = (Date.UTC(year + 1, 0) - Date.UTC(year, 0)) / intervalMs;
      const values = own.map(({ gust, meanMPerS }) =>
        hasGusts ? (gust?.speedMPerS ?? 0) : (meanMPerS ?? 0),
      );
      const readings = own.reduce((sum, { speedReadings }) => sum + speedReadings, 0);
      return {
        year,
        mostMPerS: values.reduce((a, b) => Math.max(a, b), 0),
        coverage: readings / expected,
      };
    });
}

/**
 * Winds that come back once in so many years, only where the record supports them.
 *
 * @param periods - Ten-minute periods.
 * @param intervalMs - Time between two samples. [ms]
 * @source as `returnLevel`.
 * @check src/core/review/figures/extremes.test.ts
 */
export function extremesOf(periods: readonly ReviewPeriod[], intervalMs: number): Extreme[] {
  const maxima = yearMaxima(periods, intervalMs);
  return RETURNS.map((returnYears) => {
    try {
      return { returnYears, level: returnLevel(maxima, returnYears), why: null };
    } catch (error) {
      if (!(error instanceof VanewrightError)) throw error;
      const { what, got, allowed } = error.problems[0]!;
      return { returnYears, level: null, why: `${what} Found: ${got}; needed: ${allowed}.` };
    }
  });
}
