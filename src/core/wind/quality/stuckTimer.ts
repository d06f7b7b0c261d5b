/** How long a value has stayed the same while it should have moved. */
export interface Standstill {
  /** First sample of the standstill. [ms UTC] */
  readonly fromMs: number;
  /** Latest sample of the standstill. [ms UTC] */
  readonly toMs: number;
  readonly value: number;
}

/**
 * Time since the last change of a value, counting only time in which it should have moved.
 *
 * Samples far apart add no time: nobody saw what the value did in between.
 *
 * @source Derived; time since last change at speed is the measure, not a list of magic values.
 * @check src/core/wind/quality/sampleScreen.test.ts
 */
export class StuckTimer {
  private readonly limitMs: number;
  private readonly longestStepMs: number;
  private value: number | null = null;
  private fromMs = 0;
  private toMs = 0;
  private countedMs = 0;

  /**
   * @param limitMs - Longest time that is accepted. [ms]
   * @param intervalMs - Time between two samples. [ms]
   */
  constructor(limitMs: number, intervalMs: number) {
    this.limitMs = limitMs;
    this.longestStepMs = 3 * intervalMs;
  }

  /** Whether the value has now stood still for too long. */
  get isStuck(): boolean {
    return this.countedMs >= this.limitMs;
  }

  /**
   * @param atMs - Instant of the sample. [ms UTC]
   * @param value - What the sensor shows. [any unit]
   * @param shouldMove - Whether there is wind enough to move it.
   * @returns The standstill that this sample ends, when it was too long; else `null`.
   */
  add(atMs: number, value: number, shouldMove: boolean): Standstill | null {
    if (value !== this.value) {
      const ended = this.end();
      this.value = value;
      this.fromMs = this.toMs = atMs;
      return ended;
    }
    const step = atMs - this.toMs;
    if (shouldMove && step <= this.longestStepMs) this.countedMs += step;
    this.toMs = atMs;
    return null;
  }

  /** Forgets the value; gives the standstill that was too long, or `null`. */
  end(): Standstill | null {
    const ended = this.isStuck && this.value !== null ? { ...this.span(), value: this.value } : null;
    this.value = null;
    this.countedMs = 0;
    return ended;
  }

  private span(): { fromMs: number; toMs: number } {
    return { fromMs: this.fromMs, toMs: this.toMs };
  }
}
