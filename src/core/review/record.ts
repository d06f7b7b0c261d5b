import {
  RoseSum,
  sampleLimits,
  type EqualWeight,
  type RoseLayout,
  type SampleColumns,
} from '../wind/index.ts';
import type { Finding, MonthPrint } from '../faults/index.ts';
import { QualityTally } from './sum/qualityTally.ts';
import type { ReadingWidths } from './sum/readingWidths.ts';
import { ReviewSum } from './sum/reviewSum.ts';
import { spoiltBy, withoutSpoilt, type Spoilt } from './sum/spoilt.ts';

/** How a record is reviewed. */
export interface ReviewChoices {
  /** Sectors of the rose, the first astride north. [-] */
  readonly sectors: number;
  /** What counts the same in the rose in spite of gaps. */
  readonly equalWeight: EqualWeight;
  /** Local time less UTC, for hours of the day. [min] */
  readonly utcOffsetMin: number;
  /** As `calmThreshold` gives it. [m/s] */
  readonly calmBelowMPerS: number;
  /** Fastest turn that the head can follow; `null` = not known. [deg/s] */
  readonly turnRateDegPerS: number | null;
  readonly widths: ReadingWidths;
}

/** Faults of a record, and what explains its words. */
export interface FoundFaults {
  readonly findings: readonly Finding[];
  readonly prints: readonly MonthPrint[];
}

/** Speeds at which the classes of the rose begin. [m/s] */
export const ROSE_BOUNDS_M_PER_S: readonly number[] = [2, 4, 6, 8, 11, 14];

/**
 * Goes through the samples of one station once, holding ten-minute periods, roses and counts of flags.
 *
 * @check src/app/review/reviewRecord.test.ts
 */
export class RecordSum {
  readonly choices: ReviewChoices;
  readonly findings: readonly Finding[];
  readonly prints: readonly MonthPrint[];
  /** Time between two samples. [ms] */
  readonly intervalMs: number;
  readonly sum: ReviewSum;
  readonly quality: QualityTally;
  /** With every reading counting the same, with the weight chosen, and of a record without speeds. */
  readonly roses: { readonly plain: RoseSum; readonly weighted: RoseSum; readonly vane: RoseSum };
  private readonly spoilt: readonly Spoilt[];

  /**
   * @param choices - How the record is reviewed.
   * @param intervalMs - Time between two samples. [ms], > 0
   * @param faults - Of the record; what they spoil is left out of every mean.
   */
  constructor(choices: ReviewChoices, intervalMs: number, faults: FoundFaults) {
    const { findings, prints } = faults;
    const { calmBelowMPerS, turnRateDegPerS, utcOffsetMin, widths, equalWeight } = choices;
    this.choices = choices;
    this.findings = findings;
    this.prints = prints;
    this.spoilt = spoiltBy(findings);
    this.intervalMs = intervalMs;
    const layout = (weight: EqualWeight, bounds: readonly number[] | null): RoseLayout => ({
      sectors: { count: choices.sectors, firstCentreDeg: 0 },
      speedBoundsMPerS: bounds,
      calmBelowMPerS,
      equalWeight: weight,
      utcOffsetMin,
    });
    const plain = new RoseSum(layout('reading', ROSE_BOUNDS_M_PER_S));
    this.roses = {
      plain,
      weighted: equalWeight === 'reading' ? plain : new RoseSum(layout(equalWeight, ROSE_BOUNDS_M_PER_S)),
      vane: new RoseSum(layout(equalWeight, null)),
    };
    this.sum = new ReviewSum(
      {
        intervalMs,
        calmBelowMPerS,
        utcOffsetMin,
        speedBoundsMPerS: ROSE_BOUNDS_M_PER_S,
        halfWidthOf: widths.halfWidthOf,
      },
      { wind: [...new Set([plain, this.roses.weighted])], vane: this.roses.vane },
    );
    this.quality = new QualityTally(
      sampleLimits({ intervalMs, calmBelowMPerS, readingWidthDeg: 2 * widths.mostDeg, turnRateDegPerS }),
    );
  }

  /**
   * Takes in the samples that follow.
   *
   * @param columns - [ms UTC], [deg], [m/s]
   * @throws `wind/bad-reading`, `wind/time-not-rising`, `wind/unequal-lengths`.
   */
  addColumns(columns: SampleColumns): void {
    this.sum.addColumns(withoutSpoilt(columns, this.spoilt));
    this.quality.addColumns(columns);
  }

  /** Closes what is open, as at the end of the record. */
  end(): void {
    this.sum.end();
    this.quality.end();
  }
}
