import { turnBetween, wrapDegrees } from '../../units/index.ts';
import { HeadingSum } from '../../wind/index.ts';
import { DriftSum } from './driftSum.ts';

/** A turn of directions against their habit. */
export interface Turned {
  /** `back` = the habit of the beginning is there again. */
  readonly way: 'off' | 'back';
  /** [ms UTC] */
  readonly sinceMs: number;
  /** Clockwise positive, from the habit before. [deg] */
  readonly byDeg: number;
  /** Values that tell it. [-] */
  readonly count: number;
}

/** Spreads below this are not believed. [deg] */
const SPREAD_LEAST_DEG = 5;

/** Learns what direction values have, and tells when they turn away from it or back to it. */
export class Habit {
  readonly #learns: number;
  readonly #rule: { readonly allowed: number; readonly told: number };
  readonly #learnt: number[] = [];
  #home: { readonly meanDeg: number; readonly spreadDeg: number } | null = null;
  #nowDeg = 0;
  #drift: DriftSum;

  /**
   * @param learns - Values that are learnt from. [-]
   * @param rule - As `DriftSum` has it. [spreads]
   */
  constructor(learns: number, rule: { readonly allowed: number; readonly told: number }) {
    this.#learns = learns;
    this.#rule = rule;
    this.#drift = new DriftSum(rule);
  }

  /** Mean and spread that were learnt; `null` = not yet. [deg] */
  get home(): { readonly meanDeg: number; readonly spreadDeg: number } | null {
    return this.#home;
  }

  /** @param valueDeg - A direction or a difference of two. [deg] */
  add(atMs: number, valueDeg: number): Turned | null {
    if (!this.#home) {
      this.#learn(wrapDegrees(valueDeg));
      return null;
    }
    const { meanDeg, spreadDeg } = this.#home;
    const drift = this.#drift.add(atMs, turnBetween(this.#nowDeg, wrapDegrees(valueDeg)) / spreadDeg);
    if (!drift) return null;
    const byDeg = drift.mean * spreadDeg;
    this.#nowDeg = wrapDegrees(this.#nowDeg + byDeg);
    this.#drift = new DriftSum(this.#rule);
    const fromHome = Math.abs(turnBetween(meanDeg, this.#nowDeg));
    const isBack = fromHome < Math.abs(byDeg) / 2;
    if (isBack) this.#nowDeg = meanDeg;
    return { way: isBack ? 'back' : 'off', sinceMs: drift.sinceMs, byDeg, count: drift.count };
  }

  #learn(valueDeg: number): void {
    this.#learnt.push(valueDeg);
    if (this.#learnt.length < this.#learns) return;
    const sum = new HeadingSum();
    for (const value of this.#learnt) sum.add(value);
    const meanDeg = sum.mean().headingDeg;
    if (meanDeg === null) return void this.#learnt.shift();
    const squares = this.#learnt.reduce((total, value) => total + turnBetween(meanDeg, value) ** 2, 0);
    const spreadDeg = Math.max(SPREAD_LEAST_DEG, Math.sqrt(squares / (this.#learns - 1)));
    this.#home = { meanDeg, spreadDeg };
    this.#nowDeg = meanDeg;
    this.#learnt.length = 0;
  }
}
