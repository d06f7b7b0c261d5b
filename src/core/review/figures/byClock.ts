import type { ReviewPeriod } from '../sum/reviewPeriod.ts';
import { grouped } from './grouped.ts';
import { groupFigures, type GroupFigures } from './groupFigures.ts';

/** Figures of an hour of the day or a month of the year. */
export interface ClockFigures extends GroupFigures {
  /** 0..23, or 1..12. [-] */
  readonly of: number;
}

/** Middle of ten minutes before its end. [ms] */
const HALF_MS = 300_000;

/** A month is listed from so many periods on: an hour, so that the last sample of the month before makes none. [-] */
const LEAST_PERIODS = 6;

/** Local hour of the day that the middle of a period lies in. [h] */
export function localHour(endMs: number, utcOffsetMin: number): number {
  return new Date(endMs - HALF_MS + utcOffsetMin * 60_000).getUTCHours();
}

/** Local month, 1..12, that the middle of a period lies in. [-] */
export function localMonth(endMs: number, utcOffsetMin: number): number {
  return new Date(endMs - HALF_MS + utcOffsetMin * 60_000).getUTCMonth() + 1;
}

/**
 * Figures by hour of the day and by month of the year, each of those that hold samples; a month from an hour of
 * samples on.
 *
 * @param periods - Ten-minute periods.
 * @param rule - Local time less UTC [min], time between two samples [ms]
 * @check src/core/review/figures/groupFigures.test.ts
 */
export function byClock(
  periods: readonly ReviewPeriod[],
  { utcOffsetMin, intervalMs }: { readonly utcOffsetMin: number; readonly intervalMs: number },
): { readonly hours: readonly ClockFigures[]; readonly months: readonly ClockFigures[] } {
  const figures = (of: (endMs: number, utcOffsetMin: number) => number): ClockFigures[] => {
    const groups = grouped(periods, ({ endMs }) => of(endMs, utcOffsetMin));
    return [...groups]
      .sort(([a], [b]) => a - b)
      .map(([key, group]) => ({ of: key, ...groupFigures(group, intervalMs) }));
  };
  const months = figures(localMonth);
  const long = months.filter(({ periods: count }) => count >= LEAST_PERIODS);
  return { hours: figures(localHour), months: long.length > 0 ? long : months };
}
