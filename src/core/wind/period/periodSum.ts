import type { Degrees } from '../../units/index.ts';
import { HeadingSum } from '../direction/headingSum.ts';
import type { MeanHeading } from '../direction/meanHeading.ts';
import { yamartinoSpread } from '../direction/spread.ts';
import { eastParts, northParts, unitVectorSlot } from '../direction/unitVector.ts';
import { type UnwrappedMean, UnwrappedSum } from '../direction/unwrappedSum.ts';
import { type VectorMean, WindVectorSum } from '../direction/windVectorSum.ts';
import { requireAtLeast } from '../refusal.ts';
import { type SpeedMoments, SpeedSum } from '../speed/speedSum.ts';
import { isCalm } from './calm.ts';
import type { PeriodRun } from './periodRun.ts';
import { requireSample } from './windSample.ts';

/** What a period's samples come to; a part is `null` where no sample could give it. */
export interface PeriodSummary {
  /** Samples received, readable or not. [-] */
  readonly samples: number;
  /** Samples with a usable speed. [-] */
  readonly speedReadings: number;
  /** Samples with a usable direction, or a calm that needs none. [-] */
  readonly headingReadings: number;
  /** Samples with both. [-] */
  readonly bothReadings: number;
  /** Samples whose speed is below the threshold. [-] */
  readonly calms: number;
  readonly speed: SpeedMoments | null;
  /** Mean of the headings that are no calms, each counting the same. [deg], [-] */
  readonly heading: MeanHeading | null;
  /** Yamartino's spread of the same. [deg] */
  readonly spreadDeg: Degrees | null;
  /** Mean and spread by following the vane round; for samples a second apart. [deg] */
  readonly unwrapped: UnwrappedMean | null;
  /** Speed-weighted mean, over samples with both; calms count as no movement of the air. [m/s], [deg] */
  readonly vector: VectorMean | null;
}

/**
 * Everything a period needs from its samples, in one pass and a fixed amount of memory.
 *
 * A sample whose speed is below the threshold is a calm and has no direction, whatever the vane shows.
 * A heading with no speed beside it counts for the direction only.
 *
 * @source EPA-454/R-99-005 (2000), sections 6.2.1 to 6.2.3.
 * @check src/core/wind/period/periodSum.test.ts
 */
export class PeriodSum implements PeriodRun {
  readonly calmBelowMPerS: number;
  samples = 0;
  calms = 0;
  headings = 0;
  readonly speed = new SpeedSum();
  readonly heading = new HeadingSum();
  readonly unwrapped = new UnwrappedSum();
  readonly vector = new WindVectorSum();

  /** @param calmBelowMPerS - As `calmThreshold` gives it. [m/s], ≥ 0 */
  constructor(calmBelowMPerS: number) {
    requireAtLeast(calmBelowMPerS, 0, 'PeriodSum(calmBelowMPerS)', 'm/s');
    this.calmBelowMPerS = calmBelowMPerS;
  }

  /**
   * @param atMs - Instant of the sample, later than the one before. [ms UTC]
   * @param headingDeg - Where the wind comes from; `null` = could not be read. [deg], 0 ≤ d < 360
   * @param speedMPerS - `null` = could not be read. [m/s], ≥ 0
   * @throws `wind/bad-reading` when a number is not usable; `wind/time-not-rising`.
   */
  add(atMs: number, headingDeg: Degrees | null, speedMPerS: number | null): void {
    requireSample('PeriodSum.add', atMs, headingDeg, speedMPerS);
    this.put(atMs, headingDeg, speedMPerS);
  }

  /** As `add`, for a sample that the caller has checked. [ms UTC], [deg], [m/s] */
  put(atMs: number, headingDeg: Degrees | null, speedMPerS: number | null): void {
    if (speedMPerS !== null) this.speed.add(speedMPerS);
    this.samples++;
    if (speedMPerS !== null && isCalm(speedMPerS, this.calmBelowMPerS)) {
      this.calms++;
      this.vector.addUnit(0, 0, speedMPerS);
      return;
    }
    if (headingDeg === null) return;
    const slot = unitVectorSlot(headingDeg);
    const north = northParts[slot]!;
    const east = eastParts[slot]!;
    this.headings++;
    this.heading.addUnit(north, east);
    this.unwrapped.add(atMs, headingDeg);
    if (speedMPerS !== null) this.vector.addUnit(north, east, speedMPerS);
  }

  /**
   * Takes in the samples that follow this sum's own in time.
   *
   * @throws `wind/time-not-rising` when the other sum does not begin after this one ends.
   */
  merge(later: PeriodRun): void {
    this.unwrapped.merge(later.unwrapped);
    this.samples += later.samples;
    this.calms += later.calms;
    this.headings += later.headings;
    this.speed.merge(later.speed);
    this.heading.merge(later.heading);
    this.vector.merge(later.vector);
  }

  /** What was added so far; every part is `null` for an empty period. */
  summary(): PeriodSummary {
    const heading = this.headings > 0 ? this.heading.mean() : null;
    return {
      samples: this.samples,
      speedReadings: this.speed.readings,
      headingReadings: this.headings + this.calms,
      bothReadings: this.vector.readings,
      calms: this.calms,
      speed: this.speed.readings > 0 ? this.speed.moments() : null,
      heading,
      spreadDeg: heading === null ? null : yamartinoSpread(heading.agreement),
      unwrapped: this.headings > 0 ? this.unwrapped.result() : null,
      vector: this.vector.readings > 0 ? this.vector.mean() : null,
    };
  }
}
