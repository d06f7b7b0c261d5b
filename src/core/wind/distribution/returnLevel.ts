import { VanewrightError } from '../../error/index.ts';
import { badReading, requireAtLeast } from '../refusal.ts';
import type { Interval } from '../uncertainty/interval.ts';
import { studentFactor } from '../uncertainty/student.ts';
import { gumbelFit, gumbelReturn } from './gumbel.ts';

/** Complete years that an extreme needs at least. [a]; common practice, value from memory */
export const LEAST_YEARS = 10;

/** Return periods reach this many times the record at most. [-]; common practice, value from memory */
export const LONGEST_RETURN = 4;

/** Share of a year that must be there, or its highest wind may have been missed. [-] */
export const YEAR_COMPLETE = 0.9;

/** Highest wind of one year. */
export interface YearMaximum {
  readonly year: number;
  /** Of one kind throughout: 3 s gusts or 10-minute means. [m/s], ≥ 0 */
  readonly mostMPerS: number;
  /** Share of the year with a usable speed. [-], 0 or more */
  readonly coverage: number;
}

/** A return level and what it rests on. */
export interface ReturnLevel {
  readonly speedMPerS: number;
  readonly standardErrorMPerS: number;
  /** 95 % interval. [m/s] */
  readonly interval: Interval;
  /** Years used, and those left out as incomplete. */
  readonly years: readonly number[];
  readonly leftOut: readonly number[];
}

/**
 * Wind exceeded once in so many years, only where the record supports it.
 *
 * @param maxima - Highest wind of each year, one kind throughout. [m/s]
 * @param returnYears - Mean time between years that exceed it. [a], > 1
 * @returns Level from a Gumbel distribution, with its uncertainty. [m/s]
 * @throws `wind/record-too-short` with fewer than 10 years of 90 %; `wind/return-too-long` beyond four times
 *   the record; `wind/no-variation`; `wind/bad-reading`.
 * @source E. J. Gumbel, Statistics of Extremes, Columbia 1958; limits are common practice, values from memory.
 * @check src/core/wind/distribution/returnLevel.test.ts
 */
export function returnLevel(maxima: readonly YearMaximum[], returnYears: number): ReturnLevel {
  for (const { year, mostMPerS, coverage } of maxima) {
    requireAtLeast(mostMPerS, 0, `returnLevel(maxima of ${year})`, 'm/s');
    requireAtLeast(coverage, 0, `returnLevel(coverage of ${year})`, '[-]');
  }
  if (!(returnYears > 1 && Number.isFinite(returnYears))) {
    throw badReading('returnLevel(returnYears)', returnYears, 'a finite number of years above 1');
  }
  const used = maxima.filter(({ coverage }) => coverage >= YEAR_COMPLETE);
  const years = used.length;
  if (years < LEAST_YEARS) throw recordTooShort(years, maxima.length);
  if (returnYears > LONGEST_RETURN * years) throw returnTooLong(returnYears, years);
  const fit = gumbelFit(used.map(({ mostMPerS }) => mostMPerS));
  const level = gumbelReturn(fit, returnYears, years);
  const half = studentFactor(years - 1) * level.standardErrorMPerS;
  return {
    ...level,
    interval: { low: level.speedMPerS - half, high: level.speedMPerS + half },
    years: used.map(({ year }) => year),
    leftOut: maxima.filter(({ coverage }) => coverage < YEAR_COMPLETE).map(({ year }) => year),
  };
}

function recordTooShort(complete: number, given: number): VanewrightError {
  return new VanewrightError({
    code: 'wind/record-too-short',
    what: 'The record is too short to say how strong a rare wind is.',
    where: 'returnLevel(maxima)',
    got: `${complete} complete years of ${given}`,
    allowed: `${LEAST_YEARS} years or more, each with ${YEAR_COMPLETE * 100} % of its samples`,
    fix: 'State the highest gust measured and its date instead, or use a station nearby with a long record.',
  });
}

function returnTooLong(returnYears: number, years: number): VanewrightError {
  return new VanewrightError({
    code: 'wind/return-too-long',
    what: 'The return period reaches too far beyond the record.',
    where: 'returnLevel(returnYears)',
    got: `${returnYears} years from ${years} years of record`,
    allowed: `up to ${LONGEST_RETURN} times the record`,
    fix: `Ask for ${LONGEST_RETURN * years} years or less.`,
  });
}
