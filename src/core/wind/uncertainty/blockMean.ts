import { badReading, noReadings, requireAtLeast } from '../refusal.ts';
import { blockOf, groupOf, GROUPS } from './block.ts';
import type { Interval } from './interval.ts';
import { studentFactor } from './student.ts';
import { jackknifeError } from './jackknife.ts';

/** A mean with what it rests on. */
export interface BlockMean {
  /** [unit of the values] */
  readonly mean: number;
  /** `null` when the record is shorter than two blocks of a week. [unit of the values] */
  readonly standardError: number | null;
  /** 95 % interval; `null` as above. [unit of the values] */
  readonly interval: Interval | null;
  /** Groups of weeks that it rests on. [-] */
  readonly groups: number;
}

/**
 * Running mean of any figure with the uncertainty that a finite stretch of weather leaves.
 *
 * @source as `jackknifeError`, over weeks dealt to 25 groups.
 * @check src/core/wind/uncertainty/blockMean.test.ts
 */
export class BlockMeanSum {
  private readonly weights = new Float64Array(GROUPS);
  private readonly sums = new Float64Array(GROUPS);

  /**
   * @param atMs - Instant of the value. [ms UTC]
   * @param value - [any unit], finite
   * @param weight - How much it counts. [-], ≥ 0
   * @throws `wind/bad-reading` when a number is not usable.
   */
  add(atMs: number, value: number, weight = 1): void {
    if (!Number.isFinite(atMs)) throw badReading('BlockMeanSum.add(atMs)', atMs, 'a finite time in ms');
    if (!Number.isFinite(value)) throw badReading('BlockMeanSum.add(value)', value, 'a finite number');
    requireAtLeast(weight, 0, 'BlockMeanSum.add(weight)', '[-]');
    const group = groupOf(blockOf(atMs));
    this.weights[group]! += weight;
    this.sums[group]! += weight * value;
  }

  /** Takes in the values of another sum, of any other time. */
  merge(other: BlockMeanSum): void {
    for (let group = 0; group < GROUPS; group++) {
      this.weights[group]! += other.weights[group]!;
      this.sums[group]! += other.sums[group]!;
    }
  }

  /** Whether nothing that counts was added. */
  get isEmpty(): boolean {
    return this.weights.every((weight) => weight === 0);
  }

  /** @throws `wind/no-readings` when nothing was added. */
  result(): BlockMean {
    const used = [...this.weights.keys()].filter((group) => this.weights[group]! > 0);
    const weight = used.reduce((sum, group) => sum + this.weights[group]!, 0);
    if (!(weight > 0)) throw noReadings('BlockMeanSum.result()');
    const total = used.reduce((sum, group) => sum + this.sums[group]!, 0);
    const mean = total / weight;
    const without = used.map((group) => (total - this.sums[group]!) / (weight - this.weights[group]!));
    const sizes = used.map((group) => this.weights[group]!);
    const standardError = used.length < 2 ? null : jackknifeError(mean, without, sizes);
    const half = standardError === null ? null : studentFactor(used.length - 1) * standardError;
    return {
      mean,
      standardError,
      interval: half === null ? null : { low: mean - half, high: mean + half },
      groups: used.length,
    };
  }
}
