import { turnBetween, type Degrees } from '../../units/index.ts';
import { isCalm } from '../period/calm.ts';
import type { WindSample } from '../period/windSample.ts';
import { badReading, requireAtLeast, timeNotRising } from '../refusal.ts';
import { qualityBits, type QualitySpan } from './qualityFlag.ts';
import type { SampleLimits } from './sampleLimits.ts';
import { type Standstill, StuckTimer } from './stuckTimer.ts';

const MINUTE_MS = 60_000;
const AUTOMATIC_STATIONS = 'WMO-No. 8, checks on automatic stations (from memory)';
const OWN_CHOICE = 'time since last change in wind; own choice, EPA-454/R-99-005 Table 8-4 asks 3 h';

/**
 * Flags samples as they come: range, rate, stuck, step, and whether calm and direction go together.
 *
 * Nothing is dropped or mended, and anything may be passed in: a filler or NaN gets a range flag. What only
 * shows after it has lasted (stuck, step) comes as a span.
 *
 * @source Limits as `sampleLimits`; principle of EPA-454/R-99-005 section 8.6 (flags beside the data).
 * @check src/core/wind/quality/sampleScreen.test.ts
 */
export class SampleScreen {
  private readonly limits: SampleLimits;
  private readonly vane: StuckTimer;
  private readonly cups: StuckTimer;
  private spans: QualitySpan[] = [];
  private lastAtMs = -Infinity;
  /** Last speed and heading that fitted; there was none where the time is minus infinity. [ms UTC], [m/s], [deg] */
  private speedAtMs = -Infinity;
  private speedBefore = 0;
  private headingAtMs = -Infinity;
  private headingBefore = 0;
  private minute = { endMs: -Infinity, sum: 0, readings: 0, firstMs: 0, lastMs: 0 };
  private minuteBefore: { readonly endMs: number; readonly mean: number } | null = null;

  /**
   * @param limits - As `sampleLimits` gives them, changed where the site asks. [ms], [m/s], [deg/s]
   * @throws `wind/bad-reading` when a limit is no number: nothing would ever be flagged by it.
   */
  constructor(limits: SampleLimits) {
    for (const [name, limit] of Object.entries(limits) as [string, number | null][]) {
      if (limit !== null) requireAtLeast(limit, 0, `SampleScreen(limits.${name})`, '');
    }
    this.limits = limits;
    this.vane = new StuckTimer(limits.headingStuckMs, limits.intervalMs);
    this.cups = new StuckTimer(limits.speedStuckMs, limits.intervalMs);
  }

  /**
   * @param atMs - Instant of the sample, later than the one before. [ms UTC]
   * @param headingDeg - As recorded; `null` = could not be read. [deg]
   * @param speedMPerS - As recorded; `null` = could not be read. [m/s]
   * @returns Bits of `qualityBits` that hold for this sample by what is known now. [-]
   * @throws `wind/bad-reading` when the time is not finite; `wind/time-not-rising`.
   */
  add(atMs: number, headingDeg: Degrees | null, speedMPerS: number | null): number {
    if (!Number.isFinite(atMs)) throw badReading('SampleScreen.add(atMs)', atMs, 'a finite time in ms');
    if (atMs <= this.lastAtMs) throw timeNotRising('SampleScreen.add(atMs)', this.lastAtMs, atMs);
    this.lastAtMs = atMs;
    const speedFits = speedMPerS !== null && speedMPerS >= 0 && speedMPerS <= this.limits.speedMostMPerS;
    const headingFits = headingDeg !== null && headingDeg >= 0 && headingDeg < 360;
    let bits = 0;
    if (speedMPerS !== null && !speedFits) bits |= qualityBits['speed-range'];
    if (headingDeg !== null && !headingFits) bits |= qualityBits['heading-range'];
    const speed = speedFits ? speedMPerS : null;
    if (speed !== null) bits |= this.speedBits(atMs, speed);
    if (headingFits) bits |= this.headingBits(atMs, headingDeg, speed);
    if (speed === null) return bits;
    if (isCalm(speed, this.limits.calmBelowMPerS)) {
      return headingDeg === null ? bits : bits | qualityBits['heading-in-calm'];
    }
    return headingDeg === null ? bits | qualityBits['no-heading-in-wind'] : bits;
  }

  private speedBits(atMs: number, speed: number): number {
    const { intervalMs, speedChangeMPerS } = this.limits;
    const { speedAtMs, speedBefore } = this;
    this.speedAtMs = atMs;
    this.speedBefore = speed;
    this.addToMinute(atMs, speed);
    this.note('speed-stuck', this.cups.add(atMs, speed, speed > 0), 'm/s', this.limits.speedStuckMs);
    const leaps = atMs - speedAtMs <= 3 * intervalMs && Math.abs(speed - speedBefore) > speedChangeMPerS;
    return (leaps ? qualityBits['speed-rate'] : 0) | (this.cups.isStuck ? qualityBits['speed-stuck'] : 0);
  }

  private headingBits(atMs: number, heading: Degrees, speed: number | null): number {
    const { turnRateDegPerS, headingStuckAboveMPerS, headingStuckMs } = this.limits;
    const { headingAtMs, headingBefore } = this;
    this.headingAtMs = atMs;
    this.headingBefore = heading;
    const windy = speed !== null && speed >= headingStuckAboveMPerS;
    this.note('heading-stuck', this.vane.add(atMs, heading, windy), '°', headingStuckMs);
    const tooFast =
      turnRateDegPerS !== null &&
      heading !== headingBefore &&
      Math.abs(turnBetween(headingBefore, heading)) * 1000 > turnRateDegPerS * (atMs - headingAtMs);
    return (
      (tooFast ? qualityBits['heading-rate'] : 0) | (this.vane.isStuck ? qualityBits['heading-stuck'] : 0)
    );
  }

  private addToMinute(atMs: number, speed: number): void {
    if (atMs > this.minute.endMs) {
      this.closeMinute();
      const endMs = Math.ceil(atMs / MINUTE_MS) * MINUTE_MS;
      this.minute = { endMs, sum: 0, readings: 0, firstMs: atMs, lastMs: atMs };
    }
    this.minute.sum += speed;
    this.minute.readings++;
    this.minute.lastMs = atMs;
  }

  /** Compares the minute that ends with the one before it, when nothing lies between them. */
  private closeMinute(): void {
    const { endMs, sum, readings, firstMs, lastMs } = this.minute;
    if (readings === 0) return;
    const before = this.minuteBefore;
    const mean = sum / readings;
    this.minuteBefore = { endMs, mean };
    const limit = this.limits.speedStepMPerS;
    if (before === null || endMs - before.endMs !== MINUTE_MS || Math.abs(mean - before.mean) <= limit)
      return;
    const [got, allowed] = [`${mean - before.mean} m/s from one minute to the next`, `up to ${limit} m/s`];
    this.spans.push({
      flag: 'speed-step',
      fromMs: firstMs,
      toMs: lastMs,
      got,
      allowed,
      source: AUTOMATIC_STATIONS,
    });
  }

  private note(
    flag: 'speed-stuck' | 'heading-stuck',
    still: Standstill | null,
    unit: string,
    limitMs: number,
  ): void {
    if (still === null) return;
    const { fromMs, toMs, value } = still;
    this.spans.push({
      flag,
      fromMs,
      toMs,
      got: `${value} ${unit} for ${(toMs - fromMs) / MINUTE_MS} min`,
      allowed: `unchanged in wind for less than ${limitMs / MINUTE_MS} min`,
      source: flag === 'heading-stuck' ? OWN_CHOICE : AUTOMATIC_STATIONS,
    });
  }

  /** Spans that have ended since the last call, oldest end first. */
  takeSpans(): QualitySpan[] {
    const taken = this.spans;
    this.spans = [];
    return taken;
  }

  /** Ends every open stretch, as at the end of a record, and gives the spans left. */
  end(): QualitySpan[] {
    this.closeMinute();
    this.minute = { endMs: -Infinity, sum: 0, readings: 0, firstMs: 0, lastMs: 0 };
    this.note('speed-stuck', this.cups.end(), 'm/s', this.limits.speedStuckMs);
    this.note('heading-stuck', this.vane.end(), '°', this.limits.headingStuckMs);
    return this.takeSpans();
  }
}

/**
 * Flags of a list of samples, spans written back to every sample that they cover.
 *
 * @param samples - In order of time; values as recorded.
 * @param limits - As `sampleLimits` gives them.
 * @returns Bits of `qualityBits` beside each sample, n as the samples; and the spans. [-]
 * @throws `wind/bad-reading`, `wind/time-not-rising`.
 * @source as `SampleScreen`.
 * @check src/core/wind/quality/sampleScreen.test.ts
 */
export function screenSamples(
  samples: readonly WindSample[],
  limits: SampleLimits,
): { readonly bits: Uint16Array; readonly spans: readonly QualitySpan[] } {
  const screen = new SampleScreen(limits);
  const bits = Uint16Array.from(samples, ({ atMs, headingDeg, speedMPerS }) =>
    screen.add(atMs, headingDeg, speedMPerS),
  );
  const spans = screen.end();
  for (const { flag, fromMs, toMs } of spans) {
    for (let i = firstFrom(samples, fromMs); i < samples.length && samples[i]!.atMs <= toMs; i++) {
      const part = flag === 'heading-stuck' ? samples[i]!.headingDeg : samples[i]!.speedMPerS;
      if (part !== null) bits[i]! |= qualityBits[flag];
    }
  }
  return { bits, spans };
}

/** Place of the first sample at or after an instant, by halving. */
function firstFrom(samples: readonly WindSample[], atMs: number): number {
  let [low, high] = [0, samples.length];
  while (low < high) {
    const middle = (low + high) >> 1;
    if (samples[middle]!.atMs < atMs) low = middle + 1;
    else high = middle;
  }
  return low;
}
