import { wrapDegrees, type Degrees } from '../../units/index.ts';
import { badReading, noReadings, requireAtLeast } from '../refusal.ts';
import { type MeanHeading, meanOfSum } from './meanHeading.ts';
import { eastParts, northParts, unitVectorSlot } from './unitVector.ts';

/**
 * Running sum of unit vectors: the mean heading of any number of readings in one pass.
 *
 * Calm and unread samples have no heading and must not be added.
 *
 * @source as `meanHeading`; sums of parts of a record add up exactly as the record would.
 * @check src/core/wind/direction/headingSum.test.ts
 */
export class HeadingSum {
  /** Sum of the weights; the number of readings when each weighs 1. [-] */
  weight = 0;
  /** Sum of the cosines. [-] */
  north = 0;
  /** Sum of the sines. [-] */
  east = 0;

  /**
   * @param headingDeg - Clockwise from true north; any finite value. [deg]
   * @param weight - How much it counts, such as the time it stands for. [-], ≥ 0
   * @throws `wind/bad-reading` when either is not finite or the weight is negative.
   */
  add(headingDeg: Degrees, weight = 1): void {
    if (!Number.isFinite(headingDeg)) {
      throw badReading('HeadingSum.add(headingDeg)', headingDeg, 'a finite angle in degrees');
    }
    requireAtLeast(weight, 0, 'HeadingSum.add(weight)', '[-]');
    const slot = unitVectorSlot(wrapDegrees(headingDeg));
    this.addUnit(northParts[slot]!, eastParts[slot]!, weight);
  }

  /** Adds a unit vector that is already known; the caller has checked it. [-] */
  addUnit(north: number, east: number, weight = 1): void {
    this.weight += weight;
    this.north += weight * north;
    this.east += weight * east;
  }

  /** Adds the sums of several unit vectors that each weigh 1; the caller has checked them. [-] */
  addSum(readings: number, north: number, east: number): void {
    this.weight += readings;
    this.north += north;
    this.east += east;
  }

  /** Takes in the readings of another sum, of any other time. */
  merge(other: HeadingSum): void {
    this.weight += other.weight;
    this.north += other.north;
    this.east += other.east;
  }

  /** @throws `wind/no-readings` when nothing was added. */
  mean(): MeanHeading {
    if (!(this.weight > 0)) throw noReadings('HeadingSum.mean()');
    return meanOfSum(this.north, this.east, this.weight);
  }
}
