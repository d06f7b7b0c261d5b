import { wrapDegrees, type Degrees } from '../../units/index.ts';
import { badReading, noReadings, requireAtLeast, unequalLengths } from '../refusal.ts';
import { headingOf, NO_AGREEMENT } from './meanHeading.ts';
import { eastParts, northParts, unitVectorSlot } from './unitVector.ts';

/** Mean of the wind as a vector, beside the mean of its speed. */
export interface VectorMean {
  /** Mean towards east, as the air moves; a west wind is positive. [m/s] */
  readonly eastwardMPerS: number;
  /** Mean towards north, as the air moves; a south wind is positive. [m/s] */
  readonly northwardMPerS: number;
  /** Speed of the mean vector; never above the scalar mean. [m/s] */
  readonly vectorSpeedMPerS: number;
  /** Where the mean vector comes from, in [0, 360); `null` when the winds cancel out. [deg] */
  readonly headingDeg: Degrees | null;
  /** Mean of the speed whatever its direction. [m/s] */
  readonly scalarSpeedMPerS: number;
  /** Vector speed over scalar speed: 1 = always from one side; `null` when there was no wind at all. [-] */
  readonly steadiness: number | null;
}

/**
 * Running sum of wind vectors, speed-weighted: another mean than that of the headings alone.
 *
 * @source EPA-454/R-99-005 (2000), section 6.2.2 (vector mean); steadiness is common practice, no source.
 * @check test/published/epa-454-r-99-005/direction.test.ts
 */
export class WindVectorSum {
  /** Number of readings, calm ones with them. [-] */
  readings = 0;
  private north = 0;
  private east = 0;
  private speed = 0;

  /**
   * @param headingDeg - Where the wind comes from; `null` for a calm, which moves the air nowhere. [deg]
   * @param speedMPerS - Speed as measured; a calm's counts in the scalar mean only. [m/s], ≥ 0
   * @throws `wind/bad-reading` when either is no usable number.
   */
  add(headingDeg: Degrees | null, speedMPerS: number): void {
    requireAtLeast(speedMPerS, 0, 'WindVectorSum.add(speedMPerS)', 'm/s');
    if (headingDeg === null) return this.addUnit(0, 0, speedMPerS);
    if (!Number.isFinite(headingDeg)) {
      throw badReading('WindVectorSum.add(headingDeg)', headingDeg, 'a finite angle in degrees, or null');
    }
    const slot = unitVectorSlot(wrapDegrees(headingDeg));
    this.addUnit(northParts[slot]!, eastParts[slot]!, speedMPerS);
  }

  /** Adds a unit vector [-] and speed [m/s] that the caller has checked; zeros for a calm. */
  addUnit(north: number, east: number, speedMPerS: number): void {
    this.readings++;
    this.north += north * speedMPerS;
    this.east += east * speedMPerS;
    this.speed += speedMPerS;
  }

  /** Adds the sums of several winds [m/s] that the caller has checked. */
  addSum(readings: number, north: number, east: number, speed: number): void {
    this.readings += readings;
    this.north += north;
    this.east += east;
    this.speed += speed;
  }

  /** Takes in the readings of another sum, of any other time. */
  merge(other: WindVectorSum): void {
    this.readings += other.readings;
    this.north += other.north;
    this.east += other.east;
    this.speed += other.speed;
  }

  /** @throws `wind/no-readings` when nothing was added. */
  mean(): VectorMean {
    if (this.readings === 0) throw noReadings('WindVectorSum.mean()');
    const scalar = this.speed / this.readings;
    const vector = Math.hypot(this.north, this.east) / this.readings;
    const cancels = vector <= NO_AGREEMENT * scalar;
    return {
      eastwardMPerS: -this.east / this.readings || 0, // || 0: a wind from north has no eastward part, not -0
      northwardMPerS: -this.north / this.readings || 0,
      vectorSpeedMPerS: vector,
      headingDeg: cancels ? null : headingOf(this.north, this.east),
      scalarSpeedMPerS: scalar,
      steadiness: scalar > 0 ? Math.min(1, vector / scalar) : null,
    };
  }
}

/**
 * Vector and scalar mean of winds given as two lists.
 *
 * @param headings - Where each wind comes from; `null` for a calm. [deg], n ≥ 1
 * @param speeds - Speed of each. [m/s], n the same, each ≥ 0
 * @throws `wind/unequal-lengths`, `wind/no-readings`, `wind/bad-reading`.
 * @source as `WindVectorSum`.
 * @check test/published/epa-454-r-99-005/direction.test.ts
 */
export function vectorMean(headings: readonly (Degrees | null)[], speeds: readonly number[]): VectorMean {
  if (headings.length !== speeds.length) {
    throw unequalLengths('vectorMean(headings, speeds)', headings.length, speeds.length);
  }
  const sum = new WindVectorSum();
  for (const [i, heading] of headings.entries()) sum.add(heading, speeds[i]!);
  return sum.mean();
}
