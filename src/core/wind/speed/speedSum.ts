import { READ_SPEED, type SampleColumns } from '../period/sampleColumns.ts';
import { noReadings, requireAtLeast } from '../refusal.ts';

/** What a run of speeds comes to. */
export interface SpeedMoments {
  /** Number of readings. [-] */
  readonly readings: number;
  readonly meanMPerS: number;
  /** Population standard deviation, as turbulence is defined. [m/s] */
  readonly deviationMPerS: number;
  /** Mean of the cube: never the cube of the mean. [m³/s³] */
  readonly meanCube: number;
  readonly leastMPerS: number;
  readonly mostMPerS: number;
}

/**
 * Running mean, deviation and mean cube of speeds in one pass, exact also where the deviation is small.
 *
 * @source B. P. Welford, Technometrics 4 (1962) 419; T. F. Chan, G. H. Golub, R. J. LeVeque (1979) for `merge`.
 * @check src/core/wind/speed/speedSum.test.ts
 */
export class SpeedSum {
  /** Number of readings so far. [-] */
  readings = 0;
  private mean = 0;
  private squares = 0;
  private cubes = 0;
  private least = Infinity;
  private most = -Infinity;

  /**
   * @param speedMPerS - Speed as measured, calms too. [m/s], ≥ 0
   * @throws `wind/bad-reading` when negative or not finite.
   */
  add(speedMPerS: number): void {
    requireAtLeast(speedMPerS, 0, 'SpeedSum.add(speedMPerS)', 'm/s');
    this.readings++;
    const away = speedMPerS - this.mean;
    this.mean += away / this.readings;
    this.squares += away * (speedMPerS - this.mean);
    this.cubes += speedMPerS * speedMPerS * speedMPerS;
    if (speedMPerS < this.least) this.least = speedMPerS;
    if (speedMPerS > this.most) this.most = speedMPerS;
  }

  /** Sum of a run of checked samples [m/s], in two passes over the columns. */
  static ofRun({ speedMPerS, read }: SampleColumns, from: number, to: number): SpeedSum {
    const sum = new SpeedSum();
    let readings = 0;
    let total = 0;
    let cubes = 0;
    let least = Infinity;
    let most = -Infinity;
    for (let i = from; i < to; i++) {
      if ((read[i]! & READ_SPEED) === 0) continue;
      const speed = speedMPerS[i]!;
      readings++;
      total += speed;
      cubes += speed * speed * speed;
      if (speed < least) least = speed;
      if (speed > most) most = speed;
    }
    if (readings === 0) return sum;
    const mean = total / readings;
    let squares = 0;
    for (let i = from; i < to; i++) {
      if ((read[i]! & READ_SPEED) !== 0) squares += (speedMPerS[i]! - mean) ** 2;
    }
    return Object.assign(sum, { readings, mean, squares, cubes, least, most });
  }

  /** Takes in the readings of another sum, of any other time. */
  merge(other: SpeedSum): void {
    if (other.readings === 0) return;
    const both = this.readings + other.readings;
    const away = other.mean - this.mean;
    this.squares += other.squares + (away * away * this.readings * other.readings) / both;
    this.mean += (away * other.readings) / both;
    this.readings = both;
    this.cubes += other.cubes;
    this.least = Math.min(this.least, other.least);
    this.most = Math.max(this.most, other.most);
  }

  /** @throws `wind/no-readings` when nothing was added. */
  moments(): SpeedMoments {
    if (this.readings === 0) throw noReadings('SpeedSum.moments()');
    return {
      readings: this.readings,
      meanMPerS: this.mean,
      deviationMPerS: Math.sqrt(this.squares / this.readings),
      meanCube: this.cubes / this.readings,
      leastMPerS: this.least,
      mostMPerS: this.most,
    };
  }
}

/**
 * Moments of a list of speeds.
 *
 * @param speeds - [m/s], n ≥ 1, each ≥ 0
 * @throws `wind/no-readings`, `wind/bad-reading`.
 * @source as `SpeedSum`.
 * @check src/core/wind/speed/speedSum.test.ts
 */
export function speedMoments(speeds: readonly number[]): SpeedMoments {
  const sum = new SpeedSum();
  for (const speed of speeds) sum.add(speed);
  return sum.moments();
}
