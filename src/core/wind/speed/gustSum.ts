import { READ_SPEED, type SampleColumns } from '../period/sampleColumns.ts';
import { badReading, badSetting, differentLayout, requireAtLeast, timeNotRising } from '../refusal.ts';

/** The highest running mean of a period. */
export interface Gust {
  readonly speedMPerS: number;
  /** End of the 3 s over which it was reached. [ms UTC] */
  readonly atMs: number;
}

/** How a gust is measured. */
export interface GustRule {
  /** Time between two samples, as the instrument sends them. [ms], > 0 */
  readonly intervalMs: number;
  /** Time over which the running mean is taken. [ms] */
  readonly windowMs: number;
}

/** A gust is a mean over 3 s (WMO-No. 306 Vol. I.1 Part A section 15.5.5). [ms] */
export const GUST_WINDOW_MS = 3000;

/** Share of the samples of a window that must be there [-]; own choice: at 1 Hz all 3, at 4 Hz 9 of 12. */
const LEAST_SHARE = 0.75;

const NONE: Gust = { speedMPerS: -Infinity, atMs: 0 };

/**
 * Running 3 s mean and its highest value, sliding from sample to sample, with gaps left out.
 *
 * A window holds the samples of (t - 3 s, t]. It counts when three quarters of the samples expected are in
 * it and they reach back to its start, so the first seconds after a gap give no gust: a shorter mean would
 * be too high. Blocks of 3 s, side by side, would give too low a gust.
 *
 * @source WMO-No. 8, chapter on surface wind, section 5.1.1 (running average over t0); WMO-No. 306 (t0 = 3 s).
 * @check test/published/wmo-8/gust.test.ts
 */
export class GustSum {
  readonly rule: GustRule;
  private readonly needed: number;
  /** Samples of the window that ends now, oldest first from `oldest`, round and round. */
  private times: Float64Array;
  private speeds: Float64Array;
  private oldest = 0;
  private held = 0;
  private sum = 0;
  private lastAtMs = -Infinity;
  private best = NONE;
  /** Samples of the first 3 s, and the best window that ends in them: an earlier sum may still add to it. */
  private readonly opening: { readonly atMs: number; readonly speedMPerS: number }[] = [];
  private openingBest = NONE;

  /**
   * @param rule - Sample interval and window. [ms]
   * @throws `wind/bad-setting` when the interval is not above 0, or longer than the window.
   */
  constructor(rule: GustRule) {
    const { intervalMs, windowMs } = rule;
    if (!(intervalMs > 0 && windowMs > 0 && intervalMs <= windowMs)) {
      throw badSetting(
        'GustSum(rule.intervalMs)',
        `${intervalMs} ms`,
        `above 0 ms, at most the window of ${windowMs} ms`,
        'Sample every 250 ms (1000 ms at most) to know gusts; slower records have means only.',
      );
    }
    this.rule = rule;
    const expected = Math.max(1, Math.round(windowMs / intervalMs));
    this.needed = Math.ceil(expected * LEAST_SHARE);
    this.times = new Float64Array(expected + 1);
    this.speeds = new Float64Array(expected + 1);
  }

  /**
   * @param atMs - Instant of the sample, later than the one before. [ms UTC]
   * @param speedMPerS - [m/s], ≥ 0
   * @returns Running mean that ends here, or `null` while the window is not filled. [m/s]
   * @throws `wind/bad-reading`, `wind/time-not-rising`.
   */
  add(atMs: number, speedMPerS: number): number | null {
    requireAtLeast(speedMPerS, 0, 'GustSum.add(speedMPerS)', 'm/s');
    if (!Number.isFinite(atMs)) throw badReading('GustSum.add(atMs)', atMs, 'a finite time in ms');
    if (atMs <= this.lastAtMs) throw timeNotRising('GustSum.add(atMs)', this.lastAtMs, atMs);
    const mean = this.slide(atMs, speedMPerS);
    const first = this.opening[0];
    const opens = first === undefined || atMs - first.atMs < this.rule.windowMs;
    if (opens) this.opening.push({ atMs, speedMPerS });
    if (mean === null) return null;
    if (opens && mean > this.openingBest.speedMPerS) this.openingBest = { speedMPerS: mean, atMs };
    if (!opens && mean > this.best.speedMPerS) this.best = { speedMPerS: mean, atMs };
    return mean;
  }

  /**
   * Takes in checked samples that follow this sum's own, from `from` up to, but not with, `to`.
   *
   * Windows that lie in the columns altogether are summed there; the others go one by one.
   *
   * @param columns - [ms UTC], [m/s]
   * @param from - First sample to take in; those before it are known already. [-]
   * @param to - One past the last sample. [-]
   */
  addColumns(columns: SampleColumns, from: number, to: number): void {
    const { atMs, speedMPerS, read } = columns;
    const { windowMs } = this.rule;
    let place = from;
    for (; place < to; place++) {
      const opened = this.opening[0] !== undefined && atMs[place]! - this.opening[0].atMs >= windowMs;
      if (opened && atMs[place]! - atMs[0]! >= windowMs) break;
      if ((read[place]! & READ_SPEED) !== 0) this.add(atMs[place]!, speedMPerS[place]!);
    }
    if (place === to) return;
    const best = highestWindow(columns, place, to, { ...this.rule, needed: this.needed });
    if (best !== null && best.speedMPerS > this.best.speedMPerS) this.best = best;
    this.refill(columns, to);
  }

  /** Makes the window that of the last sample before `to`, so that single samples may follow. */
  private refill({ atMs, speedMPerS, read }: SampleColumns, to: number): void {
    let first = to;
    while (first > 0 && atMs[first - 1]! > atMs[to - 1]! - this.rule.windowMs) first--;
    this.held = 0;
    this.sum = 0;
    for (let i = first; i < to; i++) {
      if ((read[i]! & READ_SPEED) !== 0) this.slide(atMs[i]!, speedMPerS[i]!);
    }
    this.lastAtMs = atMs[to - 1]!;
  }

  /** Brings the window to end at this sample; its mean, or `null` where it is not filled. [m/s] */
  private slide(atMs: number, speedMPerS: number): number | null {
    const { windowMs } = this.rule;
    while (this.held > 0 && this.times[this.oldest]! <= atMs - windowMs) this.drop();
    if (this.held === this.times.length) this.widen();
    const place = (this.oldest + this.held) % this.times.length;
    this.times[place] = atMs;
    this.speeds[place] = speedMPerS;
    this.held++;
    this.sum += speedMPerS;
    if (place === 0) this.sum = this.freshSum(); // once a round, so that rounding cannot build up
    this.lastAtMs = atMs;
    const reachesBack = atMs - this.times[this.oldest]! >= reachMs(this.rule);
    return reachesBack && this.held >= this.needed ? this.sum / this.held : null;
  }

  private drop(): void {
    this.sum -= this.speeds[this.oldest]!;
    this.oldest = (this.oldest + 1) % this.times.length;
    this.held--;
  }

  /** Samples came closer together than the interval says: keep them all. */
  private widen(): void {
    const inOrder = (ring: Float64Array): Float64Array => {
      const wider = new Float64Array(2 * ring.length);
      wider.set(ring.subarray(this.oldest));
      wider.set(ring.subarray(0, this.oldest), ring.length - this.oldest);
      return wider;
    };
    this.times = inOrder(this.times);
    this.speeds = inOrder(this.speeds);
    this.oldest = 0;
  }

  private freshSum(): number {
    let sum = 0;
    for (let i = 0; i < this.held; i++) sum += this.speeds[(this.oldest + i) % this.speeds.length]!;
    return sum;
  }

  /**
   * Takes in the samples that follow this sum's own in time, with the windows that lie across the join.
   *
   * @throws `wind/different-layout` when interval or window differ; `wind/time-not-rising`.
   */
  merge(later: GustSum): void {
    const { intervalMs, windowMs } = this.rule;
    if (later.rule.intervalMs !== intervalMs || later.rule.windowMs !== windowMs) {
      throw differentLayout(
        'GustSum.merge(later)',
        `${later.rule.windowMs} ms windows of samples every ${later.rule.intervalMs} ms`,
        `${windowMs} ms windows of samples every ${intervalMs} ms`,
      );
    }
    for (const { atMs, speedMPerS } of later.opening) this.add(atMs, speedMPerS);
    if (later.best.speedMPerS > this.best.speedMPerS) this.best = later.best;
    if (later.lastAtMs <= this.lastAtMs) return;
    this.times = later.times.slice();
    this.speeds = later.speeds.slice();
    this.oldest = later.oldest;
    this.held = later.held;
    this.sum = later.sum;
    this.lastAtMs = later.lastAtMs;
  }

  /** Highest running mean since the start or the last `take`, or `null` when no window was filled. */
  highest(): Gust | null {
    const best = this.openingBest.speedMPerS > this.best.speedMPerS ? this.openingBest : this.best;
    return best === NONE ? null : best;
  }

  /** As `highest`, and begins a new period; its first windows still reach back into the old one. */
  take(): Gust | null {
    const gust = this.highest();
    this.best = this.openingBest = NONE;
    return gust;
  }
}

/**
 * Highest window among those that end at samples from `from` up to `to`, each lying in the columns altogether.
 *
 * @param columns - Checked samples. [ms UTC], [m/s]
 * @param rule - Interval and window [ms], and the samples that a window needs [-]
 */
function highestWindow(
  { atMs, speedMPerS, read }: SampleColumns,
  from: number,
  to: number,
  rule: GustRule & { readonly needed: number },
): Gust | null {
  const { windowMs, needed } = rule;
  const shortestMs = reachMs(rule);
  let oldest = from;
  let held = 0;
  let sum = 0;
  let best = -1;
  let bestAtMs = 0;
  while (oldest > 0 && atMs[oldest - 1]! > atMs[from]! - windowMs) oldest--;
  for (let i = oldest; i < to; i++) {
    if ((read[i]! & READ_SPEED) === 0) continue;
    const fromMs = atMs[i]! - windowMs;
    held++;
    sum += speedMPerS[i]!;
    for (; atMs[oldest]! <= fromMs || (read[oldest]! & READ_SPEED) === 0; oldest++) {
      if ((read[oldest]! & READ_SPEED) === 0) continue;
      held--;
      sum -= speedMPerS[oldest]!;
    }
    if (sum <= best * held || i < from) continue; // most windows end here
    if (held < needed || atMs[i]! - atMs[oldest]! < shortestMs) continue;
    best = sum / held;
    bestAtMs = atMs[i]!;
  }
  return best < 0 ? null : { speedMPerS: best, atMs: bestAtMs };
}

/** Time from first to last sample that a window reaches over at least, which the first after a gap do not. [ms] */
function reachMs({ windowMs, intervalMs }: GustRule): number {
  return windowMs - 1.5 * intervalMs;
}

/**
 * Highest 3 s running mean of evenly spaced speeds.
 *
 * @param speeds - In order of time. [m/s], each ≥ 0
 * @param intervalMs - Time between two samples. [ms], > 0, ≤ 3000
 * @returns The gust, its time counted from the first sample at 0 ms; `null` when shorter than a window.
 * @throws as `GustSum`.
 * @source as `GustSum`.
 * @check test/published/wmo-8/gust.test.ts
 */
export function slidingGust(speeds: readonly number[], intervalMs: number): Gust | null {
  const sum = new GustSum({ intervalMs, windowMs: GUST_WINDOW_MS });
  for (const [i, speed] of speeds.entries()) sum.add(i * intervalMs, speed);
  return sum.highest();
}
