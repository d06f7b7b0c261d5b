import {
  roseOf,
  type EqualWeight,
  type QualityFlag,
  type QualitySpan,
  type Rose,
  type RoseSum,
} from '../wind/index.ts';
import type { Finding, MonthPrint } from '../faults/index.ts';
import type { Degrees } from '../units/index.ts';
import { byClock, type ClockFigures } from './figures/byClock.ts';
import { comparisonOf, type Comparison } from './figures/comparison.ts';
import { coverageOf, type Coverage } from './figures/coverage.ts';
import { distributionOf, type Distribution } from './figures/distribution.ts';
import { extremesOf, type Extreme } from './figures/extremes.ts';
import { groupFigures, type GroupFigures } from './figures/groupFigures.ts';
import { topGusts, type TopGust } from './figures/gusts.ts';
import type { RecordSum } from './record.ts';
import type { FlaggedDay } from './sum/qualityTally.ts';

/** What a review is of. */
export interface ReviewSubject {
  readonly name: string;
  readonly station: string;
  /** What is reviewed begins after this. [ms UTC] */
  readonly fromMs: number;
  /** End of the time that is reviewed, part of it. [ms UTC] */
  readonly untilMs: number;
  /** Standard error of north where a setting of it tells one. [deg] */
  readonly northSigmaDeg: Degrees | null;
  /** Whether the cups have a calibration in the instrument file. */
  readonly hasCalibration: boolean;
}

/** Counts of the quality flags, beside the data. */
export interface QualityFigures {
  readonly totals: Readonly<Record<QualityFlag, number>>;
  readonly days: readonly FlaggedDay[];
  readonly spans: readonly QualitySpan[];
}

/** A review as data: everything that its page, its pictures and its tables show. */
export interface Review extends ReviewSubject {
  readonly samples: number;
  readonly firstMs: number;
  readonly lastMs: number;
  /** Time between two samples. [ms] */
  readonly intervalMs: number;
  readonly calmBelowMPerS: number;
  readonly utcOffsetMin: number;
  readonly equalWeight: EqualWeight;
  /** Half-widths of the readings. [deg] */
  readonly halfWidth: {
    readonly leastDeg: Degrees;
    readonly mostDeg: Degrees;
    readonly source: 'as-built' | 'drawn';
  };
  readonly whole: GroupFigures;
  readonly hours: readonly ClockFigures[];
  readonly months: readonly ClockFigures[];
  /** `null` where no reading has a direction. */
  readonly rose: Rose | null;
  /** `null` without any speed. */
  readonly distribution: Distribution | null;
  readonly gusts: readonly TopGust[];
  readonly coverage: Coverage;
  readonly extremes: readonly Extreme[];
  readonly quality: QualityFigures;
  /** Faults that the record shows, oldest first. */
  readonly findings: readonly Finding[];
  /** What explains the words of each month best; empty where no words were logged. */
  readonly prints: readonly MonthPrint[];
  readonly comparison: Comparison | null;
}

/** Gusts that are listed. [-] */
const TOP_GUSTS = 10;

/** Rose of a sum, or `null` when nothing in it has a direction or is calm. */
function roseIn(sum: RoseSum, expected: number): Rose | null {
  return sum.groupCells.some((weight) => weight > 0) ? roseOf(sum, expected) : null;
}

/** The rose to show: with speeds where there are any. */
function shownRose({ roses, sum }: RecordSum, expected: number): Rose | null {
  const hasSpeed = sum.periods.some(({ speedReadings }) => speedReadings > 0);
  return roseIn(hasSpeed ? roses.weighted : roses.vane, expected);
}

/** The other record of a comparison. */
export interface OtherRecord {
  readonly record: RecordSum;
  readonly fromMs: number;
  readonly untilMs: number;
  /** What it is, in words. */
  readonly against: string;
}

/** What one record is compared with, or `null` where either has no rose. */
function comparedWith(record: RecordSum, rose: Rose | null, other: OtherRecord | null): Comparison | null {
  if (!rose || !other) return null;
  const theirs = shownRose(other.record, (other.untilMs - other.fromMs) / other.record.intervalMs);
  if (!theirs) return null;
  return comparisonOf(
    { rose, periods: record.sum.periods },
    { rose: theirs, periods: other.record.sum.periods },
    other.against,
  );
}

/**
 * Reviews a record that was gone through.
 *
 * @param record - Its sums, ended.
 * @param subject - What it is of. [ms UTC]
 * @param other - What it is compared with; `null` for nothing.
 * @check src/app/review/reviewRecord.test.ts
 */
export function reviewOf(record: RecordSum, subject: ReviewSubject, other: OtherRecord | null): Review {
  const { sum, intervalMs, choices, quality } = record;
  const { periods } = sum;
  const { leastDeg, mostDeg, source } = choices.widths;
  const coverage = coverageOf(periods, { ...subject, intervalMs });
  const rose = shownRose(record, coverage.expected);
  return {
    ...subject,
    samples: sum.samples,
    firstMs: sum.firstMs,
    lastMs: sum.lastMs,
    intervalMs,
    calmBelowMPerS: choices.calmBelowMPerS,
    utcOffsetMin: choices.utcOffsetMin,
    equalWeight: choices.equalWeight,
    halfWidth: { leastDeg, mostDeg, source },
    whole: groupFigures(periods, intervalMs),
    ...byClock(periods, { utcOffsetMin: choices.utcOffsetMin, intervalMs }),
    rose,
    distribution: distributionOf(periods, intervalMs),
    gusts: topGusts(periods, TOP_GUSTS),
    coverage,
    extremes: extremesOf(periods, intervalMs),
    quality: { totals: quality.totals(), days: quality.days(), spans: quality.spans },
    findings: record.findings,
    prints: record.prints,
    comparison: comparedWith(record, rose, other),
  };
}
