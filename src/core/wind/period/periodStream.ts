import type { Degrees } from '../../units/index.ts';
import { requirePositive, timeNotRising } from '../refusal.ts';
import { type Gust, GUST_WINDOW_MS, GustSum } from '../speed/gustSum.ts';
import { gustFactor, turbulenceIntensity } from '../speed/turbulence.ts';
import { completeness, PERIOD_COMPLETE, type Completeness } from './completeness.ts';
import { expectedReadings, periodEnd, TEN_MINUTES_MS } from './periodClock.ts';
import { periodRun } from './periodRun.ts';
import { PeriodSum, type PeriodSummary } from './periodSum.ts';
import { requireColumns, type SampleColumns } from './sampleColumns.ts';
import { requireSample, type WindSample } from './windSample.ts';

/** How a record is cut into periods. */
export interface PeriodRule {
  /** Time between two samples, as the instrument sends them. [ms], > 0 */
  readonly intervalMs: number;
  /** As `calmThreshold` gives it. [m/s], ≥ 0 */
  readonly calmBelowMPerS: number;
  /** Length of a period; 600 000 unless given. [ms], > 0 */
  readonly periodMs?: number;
}

/** One period of a record, named by its end. */
export interface WindPeriod extends PeriodSummary {
  /** The period is (endMs - periodMs, endMs]. [ms UTC] */
  readonly endMs: number;
  readonly completeness: Completeness;
  /** Whether at least 75 % of the samples have a usable speed, and the same for direction. */
  readonly speedIsComplete: boolean;
  readonly headingIsComplete: boolean;
  /** Highest 3 s mean that ends in the period; `null` = slower than 3 s, or no 3 s without a gap. */
  readonly gust: Gust | null;
  /** Deviation over mean; of samples as they come, so cups average over their own interval. [-] */
  readonly turbulenceIntensity: number | null;
  /** Gust over mean. [-] */
  readonly gustFactor: number | null;
}

/**
 * Cuts samples into 10-minute periods as they come, holding one period in memory.
 *
 * Periods without any sample are not made up: no report is not zero wind.
 *
 * @source WMO-No. 8 section 5.1.1 (10 minutes, 3 s gust); EPA-454/R-99-005 section 7.1 (labelled by the end).
 * @check src/core/wind/period/periodStream.test.ts
 */
export class PeriodStream {
  private readonly rule: Required<PeriodRule>;
  private readonly gusts: GustSum | null;
  private sum: PeriodSum;
  private endMs = -Infinity;
  private lastAtMs = -Infinity;

  /**
   * @param rule - Interval, calm threshold, period. [ms], [m/s]
   * @throws `wind/bad-reading` when a number of the rule is out of range.
   */
  constructor(rule: PeriodRule) {
    requirePositive(rule.intervalMs, 'PeriodStream(rule.intervalMs)', 'ms');
    this.rule = { periodMs: TEN_MINUTES_MS, ...rule };
    requirePositive(this.rule.periodMs, 'PeriodStream(rule.periodMs)', 'ms');
    const { intervalMs } = rule;
    this.gusts = intervalMs <= GUST_WINDOW_MS ? new GustSum({ intervalMs, windowMs: GUST_WINDOW_MS }) : null;
    this.sum = new PeriodSum(rule.calmBelowMPerS);
  }

  /**
   * @param atMs - Instant of the sample, later than the one before. [ms UTC]
   * @param headingDeg - Where the wind comes from; `null` = could not be read. [deg]
   * @param speedMPerS - `null` = could not be read. [m/s], ≥ 0
   * @returns The period that this sample closed, or `null`.
   * @throws `wind/bad-reading`, `wind/time-not-rising`.
   */
  add(atMs: number, headingDeg: Degrees | null, speedMPerS: number | null): WindPeriod | null {
    requireSample('PeriodStream.add', atMs, headingDeg, speedMPerS);
    if (atMs <= this.lastAtMs) throw timeNotRising('PeriodStream.add(atMs)', this.lastAtMs, atMs);
    const closes = atMs > this.endMs;
    const closed = closes ? this.end() : null;
    if (closes) this.endMs = periodEnd(atMs, this.rule.periodMs);
    this.lastAtMs = atMs;
    this.sum.put(atMs, headingDeg, speedMPerS);
    if (speedMPerS !== null) this.gusts?.add(atMs, speedMPerS);
    return closed;
  }

  /**
   * Takes in many samples at once, with the same result as one by one.
   *
   * @param columns - Samples that follow those before. [ms UTC], [deg], [m/s]
   * @returns The periods that these samples closed, in order.
   * @throws `wind/bad-reading`, `wind/time-not-rising`, `wind/unequal-lengths`; nothing is taken in then.
   */
  addColumns(columns: SampleColumns): WindPeriod[] {
    requireColumns('PeriodStream.addColumns', columns, this.lastAtMs);
    const { atMs } = columns;
    const closed: WindPeriod[] = [];
    for (let from = 0, to = 0; from < atMs.length; from = to) {
      if (atMs[from]! > this.endMs) {
        const before = this.end();
        if (before) closed.push(before);
        this.endMs = periodEnd(atMs[from]!, this.rule.periodMs);
      }
      while (to < atMs.length && atMs[to]! <= this.endMs) to++;
      this.sum.merge(periodRun(columns, from, to, this.rule.calmBelowMPerS));
      this.gusts?.addColumns(columns, from, to);
      this.lastAtMs = atMs[to - 1]!;
    }
    return closed;
  }

  /** The period begun but not closed, which is then closed; `null` when there is none. */
  end(): WindPeriod | null {
    if (this.endMs === -Infinity) return null;
    const { intervalMs, periodMs, calmBelowMPerS } = this.rule;
    const summary = this.sum.summary();
    const share = completeness({
      expected: expectedReadings(periodMs, intervalMs),
      speed: summary.speedReadings,
      heading: summary.headingReadings,
      both: summary.bothReadings,
    });
    const gust = this.gusts?.take() ?? null;
    const period: WindPeriod = {
      ...summary,
      endMs: this.endMs,
      completeness: share,
      speedIsComplete: share.speed >= PERIOD_COMPLETE,
      headingIsComplete: share.heading >= PERIOD_COMPLETE,
      gust,
      turbulenceIntensity:
        summary.speed && turbulenceIntensity(summary.speed.deviationMPerS, summary.speed.meanMPerS),
      gustFactor: gust && summary.speed && gustFactor(gust.speedMPerS, summary.speed.meanMPerS),
    };
    this.sum = new PeriodSum(calmBelowMPerS);
    this.endMs = -Infinity;
    return period;
  }
}

/**
 * Periods of a whole record.
 *
 * @param samples - In order of time.
 * @param rule - Interval, calm threshold, period. [ms], [m/s]
 * @throws `wind/bad-reading`, `wind/time-not-rising`.
 * @source as `PeriodStream`.
 * @check src/core/wind/period/periodStream.test.ts
 */
export function* windPeriods(samples: Iterable<WindSample>, rule: PeriodRule): Generator<WindPeriod, void> {
  const stream = new PeriodStream(rule);
  for (const { atMs, headingDeg, speedMPerS } of samples) {
    const closed = stream.add(atMs, headingDeg, speedMPerS);
    if (closed) yield closed;
  }
  const last = stream.end();
  if (last) yield last;
}
