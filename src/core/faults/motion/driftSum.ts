/** A drift that was told. */
export interface Drift {
  /** Where it began. [ms UTC] */
  readonly sinceMs: number;
  /** Mean and number of the values since. [spreads], [-] */
  readonly mean: number;
  readonly count: number;
}

interface Side {
  sum: number;
  total: number;
  count: number;
  sinceMs: number;
}

const fresh = (): Side => ({ sum: 0, total: 0, count: 0, sinceMs: 0 });

/**
 * Cumulative sum of how far values lie off their mean, for either side.
 *
 * @source E. S. Page, Continuous inspection schemes, Biometrika 41 (1954) 100-115.
 * @check src/core/faults/motion/slippedClamp.test.ts
 */
export class DriftSum {
  readonly #rule: { readonly allowed: number; readonly told: number };
  #up = fresh();
  #down = fresh();

  /** @param rule - Drift that is allowed each time, and sum that is told. [spreads] */
  constructor(rule: { readonly allowed: number; readonly told: number }) {
    this.#rule = rule;
  }

  /**
   * @param atMs - When. [ms UTC]
   * @param off - How far off; beyond 3 it counts as 3, so that one bad day tells nothing. [spreads]
   */
  add(atMs: number, off: number): Drift | null {
    const value = Math.max(-3, Math.min(3, off));
    this.#step(this.#up, atMs, value, off);
    this.#step(this.#down, atMs, -value, -off);
    const side = [this.#up, this.#down].find(({ sum }) => sum >= this.#rule.told);
    if (!side) return null;
    const sign = side === this.#up ? 1 : -1;
    return { sinceMs: side.sinceMs, mean: (sign * side.total) / side.count, count: side.count };
  }

  #step(side: Side, atMs: number, value: number, off: number): void {
    if (side.sum === 0) Object.assign(side, fresh(), { sinceMs: atMs });
    side.sum = Math.max(0, side.sum + value - this.#rule.allowed);
    side.total += off;
    side.count++;
  }
}
