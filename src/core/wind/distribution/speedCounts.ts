import { badReading, badSetting, differentLayout } from '../refusal.ts';

/** Highest speed that is counted; instruments for surface wind end at 75 m/s. [m/s] */
export const COUNTED_UP_TO_M_PER_S = 150;

/**
 * Counts of speeds in fine classes: a whole year's distribution in a few thousand numbers.
 *
 * Speeds are taken to the nearest multiple of the class width, so that a log written to 0.1 m/s is kept exactly.
 *
 * @source Definition (histogram).
 * @check src/core/wind/distribution/speedCounts.test.ts
 */
export class SpeedCounts {
  /** [m/s] */
  readonly classMPerS: number;
  private readonly counts: Float64Array;

  /**
   * @param classMPerS - Class width; 0.1 suits most logs. [m/s], 0.001..10
   * @throws `wind/bad-setting` when out of range.
   */
  constructor(classMPerS: number) {
    if (!(classMPerS >= 0.001 && classMPerS <= 10)) {
      throw badSetting('SpeedCounts(classMPerS)', `${classMPerS} m/s`, '0.001..10 m/s', 'Use 0.1 m/s.');
    }
    this.classMPerS = classMPerS;
    this.counts = new Float64Array(Math.ceil(COUNTED_UP_TO_M_PER_S / classMPerS) + 1);
  }

  /**
   * @param speedMPerS - [m/s], 0..150
   * @param weight - How much it counts. [-], ≥ 0
   * @throws `wind/bad-reading` when a number is not usable.
   */
  add(speedMPerS: number, weight = 1): void {
    if (!(speedMPerS >= 0 && speedMPerS <= COUNTED_UP_TO_M_PER_S)) {
      throw badReading('SpeedCounts.add(speedMPerS)', speedMPerS, `0..${COUNTED_UP_TO_M_PER_S} m/s`);
    }
    if (!(weight >= 0 && Number.isFinite(weight))) {
      throw badReading('SpeedCounts.add(weight)', weight, 'a finite weight of 0 or more');
    }
    this.counts[Math.round(speedMPerS / this.classMPerS)]! += weight;
  }

  /** @throws `wind/different-layout` when the class widths differ. */
  merge(other: SpeedCounts): void {
    if (other.classMPerS !== this.classMPerS) {
      throw differentLayout(
        'SpeedCounts.merge(other)',
        `classes of ${other.classMPerS} m/s`,
        `classes of ${this.classMPerS} m/s`,
      );
    }
    other.counts.forEach((weight, i) => (this.counts[i]! += weight));
  }

  /** Speeds that occurred, lowest first, each with its weight. [m/s], [-] */
  occurring(): { readonly speeds: number[]; readonly weights: number[] } {
    const used = [...this.counts.keys()].filter((i) => this.counts[i]! > 0);
    return { speeds: used.map((i) => i * this.classMPerS), weights: used.map((i) => this.counts[i]!) };
  }
}
