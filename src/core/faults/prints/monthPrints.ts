import type { CodeTable } from '../../codes/index.ts';
import type { FaultSample } from '../readings/seen.ts';
import { rankCauses, type RankedCause } from './rankCauses.ts';
import { WordSteps } from './wordSteps.ts';

/** What explains the words of one month best. */
export interface MonthPrint {
  /** Such as `2026-03`, UTC. */
  readonly month: string;
  /** Likeliest first. */
  readonly causes: readonly RankedCause[];
}

/** Steps of a month from which a cause is told. [-] */
const STEPS_LEAST = 1000;
/** Causes that are given. [-] */
const CAUSES = 3;

/** Counts the words of each month of a record, to match them with everything that may be wrong with the disc. */
export class MonthPrints {
  readonly #code: CodeTable;
  readonly #months = new Map<string, WordSteps>();
  #endMs = -Infinity;
  #now = new WordSteps();

  constructor(code: CodeTable) {
    this.#code = code;
  }

  /** One sample, in order of time. [ms UTC] */
  add(sample: Pick<FaultSample, 'atMs' | 'word'>): void {
    if (sample.atMs >= this.#endMs) this.#begin(sample.atMs);
    this.#now.add(sample);
  }

  #begin(atMs: number): void {
    const date = new Date(atMs);
    this.#endMs = Date.UTC(date.getUTCFullYear(), date.getUTCMonth() + 1, 1);
    this.#now = new WordSteps();
    this.#months.set(date.toISOString().slice(0, 7), this.#now);
  }

  /**
   * Each month with its likeliest causes; months of few words are left out, and so are discs of more than 64 positions.
   *
   * @check src/core/faults/prints/monthPrints.test.ts
   */
  result(): MonthPrint[] {
    return [...this.#months].flatMap(([month, steps]) => {
      const count = [...steps.counts.values()].reduce((a, b) => a + b, 0);
      const causes = count < STEPS_LEAST ? [] : rankCauses(steps, this.#code, CAUSES);
      return causes.length === 0 ? [] : [{ month, causes }];
    });
  }
}
