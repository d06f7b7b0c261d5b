import {
  GUST_WINDOW_MS,
  GustSum,
  periodEnd,
  READ_HEADING,
  READ_SPEED,
  requireColumns,
  TEN_MINUTES_MS,
  type RoseSum,
  type SampleColumns,
} from '../../wind/index.ts';
import { ReadingSlots, SLOTS_PER_DEG, type HalfWidthOf } from './readingSlots.ts';
import type { ReviewPeriod } from './reviewPeriod.ts';
import { RoseFeed } from './roseFeed.ts';

/** How a record is gone through. */
export interface ReviewRule {
  /** Time between two samples. [ms], > 0 */
  readonly intervalMs: number;
  /** As `calmThreshold` gives it. [m/s], ≥ 0 */
  readonly calmBelowMPerS: number;
  /** Speeds at which a class of the rose begins, rising. [m/s] */
  readonly speedBoundsMPerS: readonly number[];
  /** Local time less UTC. [min] */
  readonly utcOffsetMin: number;
  readonly halfWidthOf: HalfWidthOf;
}

/**
 * One pass over the samples of a station: ten-minute periods and roses. Memory grows with the periods, about 200 bytes
 * each, and not with the samples.
 *
 * @source as `PeriodStream` and `RoseSum`, whose figures it gives; only faster, since a disc shows few headings.
 * @check src/core/review/sum/reviewSum.test.ts
 */
export class ReviewSum {
  readonly rule: ReviewRule;
  readonly periods: ReviewPeriod[] = [];
  firstMs = Infinity;
  lastMs = -Infinity;
  samples = 0;
  private readonly slots: ReadingSlots;
  private readonly feed: RoseFeed;
  private readonly gusts: GustSum | null;
  /** Of the period that is open: readings and speeds by slot, and the slots in use. */
  private readonly counts: Float64Array;
  private readonly speeds: Float64Array;
  private readonly used: Int32Array;
  private open: OpenPeriod;

  /**
   * @param rule - Interval, calm threshold, classes, local time, width of a reading.
   * @param roses - Roses to be filled, all with the sectors and classes of the rule.
   */
  constructor(rule: ReviewRule, roses: { readonly wind: readonly RoseSum[]; readonly vane: RoseSum }) {
    this.rule = rule;
    this.slots = new ReadingSlots(rule.halfWidthOf);
    this.feed = new RoseFeed(this.slots, rule, roses);
    const { intervalMs } = rule;
    this.gusts = intervalMs <= GUST_WINDOW_MS ? new GustSum({ intervalMs, windowMs: GUST_WINDOW_MS }) : null;
    this.counts = new Float64Array(this.slots.count);
    this.speeds = new Float64Array(this.slots.count);
    this.used = new Int32Array(this.slots.count);
    this.open = emptyPeriod(-Infinity);
  }

  /**
   * Takes in the samples that follow.
   *
   * @param columns - [ms UTC], [deg], [m/s]
   * @throws `wind/bad-reading`, `wind/time-not-rising`, `wind/unequal-lengths`; nothing is taken in then.
   */
  addColumns(columns: SampleColumns): void {
    requireColumns('ReviewSum.addColumns', columns, this.lastMs);
    const { atMs } = columns;
    const count = atMs.length;
    if (count === 0) return;
    this.firstMs = Math.min(this.firstMs, atMs[0]!);
    this.lastMs = atMs[count - 1]!;
    this.samples += count;
    for (let from = 0, to = 0; from < count; from = to) {
      if (atMs[from]! > this.open.endMs) {
        this.closePeriod();
        this.open = emptyPeriod(periodEnd(atMs[from]!, TEN_MINUTES_MS));
      }
      while (to < count && atMs[to]! <= this.open.endMs) to++;
      this.feed.openPeriod(this.open.endMs);
      this.addRun(columns, from, to);
      this.addSpeeds(columns, from, to);
      this.gusts?.addColumns(columns, from, to);
    }
  }

  /** Readings by slot, of a run that lies in the open period. */
  private addRun({ headingDeg, speedMPerS, read }: SampleColumns, from: number, to: number): void {
    const { counts, speeds, used, slots, open, feed } = this;
    const { calmBelowMPerS } = this.rule;
    let [inUse, calms, calmSpeeds, both, withoutSpeed] = [open.inUse, 0, 0, 0, 0];
    for (let i = from; i < to; i++) {
      const bits = read[i]!;
      const speed = speedMPerS[i]!;
      const hasSpeed = (bits & READ_SPEED) !== 0;
      if (hasSpeed && (speed < calmBelowMPerS || speed === 0)) {
        calms++;
        calmSpeeds += speed;
        continue;
      }
      if ((bits & READ_HEADING) === 0) continue;
      const slot = (headingDeg[i]! * SLOTS_PER_DEG) | 0;
      if (counts[slot] === 0) {
        used[inUse++] = slot;
        slots.learn(slot, headingDeg[i]!);
      }
      counts[slot]!++;
      if (!hasSpeed) {
        withoutSpeed++;
        feed.addVane(slot);
        continue;
      }
      both++;
      speeds[slot]! += speed;
      feed.addWind(slot, speed);
    }
    open.inUse = inUse;
    open.samples += to - from;
    open.calms += calms;
    open.calmSpeeds += calmSpeeds;
    open.both += both;
    open.withoutSpeed += withoutSpeed;
  }

  /** Mean, squares and cubes of the speeds of a run, in two passes so that a small deviation stays exact. */
  private addSpeeds({ speedMPerS, read }: SampleColumns, from: number, to: number): void {
    let [readings, total, cubes] = [0, 0, 0];
    for (let i = from; i < to; i++) {
      if ((read[i]! & READ_SPEED) === 0) continue;
      const speed = speedMPerS[i]!;
      readings++;
      total += speed;
      cubes += speed * speed * speed;
    }
    if (readings === 0) return;
    const mean = total / readings;
    let squares = 0;
    for (let i = from; i < to; i++) {
      if ((read[i]! & READ_SPEED) === 0) continue;
      const away = speedMPerS[i]! - mean;
      squares += away * away;
    }
    const { open } = this;
    const all = open.speedReadings + readings;
    const away = mean - open.mean;
    open.squares += squares + (away * away * open.speedReadings * readings) / all;
    open.mean += (away * readings) / all;
    open.speedReadings = all;
    open.cubes += cubes;
  }

  private closePeriod(): void {
    const { open, slots, counts, speeds, used } = this;
    if (open.endMs === -Infinity) return;
    let [north, east, windNorth, windEast, windSpeeds] = [0, 0, 0, 0, open.calmSpeeds];
    for (let place = 0; place < open.inUse; place++) {
      const slot = used[place]!;
      north += counts[slot]! * slots.norths[slot]!;
      east += counts[slot]! * slots.easts[slot]!;
      windNorth += speeds[slot]! * slots.norths[slot]!;
      windEast += speeds[slot]! * slots.easts[slot]!;
      windSpeeds += speeds[slot]!;
      counts[slot] = 0;
      speeds[slot] = 0;
    }
    const { speedReadings, calms, both, withoutSpeed, mean, squares, cubes } = open;
    const hasSpeed = speedReadings > 0;
    this.feed.closePeriod({ calms, withoutHeading: speedReadings - calms - both });
    this.periods.push({
      endMs: open.endMs,
      samples: open.samples,
      speedReadings,
      headingReadings: calms + both + withoutSpeed,
      bothReadings: calms + both,
      calms,
      north,
      east,
      windNorth,
      windEast,
      windSpeeds,
      meanMPerS: hasSpeed ? mean : null,
      deviationMPerS: hasSpeed ? Math.sqrt(squares / speedReadings) : null,
      meanCube: hasSpeed ? cubes / speedReadings : null,
      gust: this.gusts?.take() ?? null,
    });
    this.open = emptyPeriod(-Infinity);
  }

  /** Closes what is open, as at the end of the record. */
  end(): void {
    this.closePeriod();
    this.feed.flush();
  }
}

/** Sums of the period that is open. */
interface OpenPeriod {
  readonly endMs: number;
  inUse: number;
  samples: number;
  calms: number;
  calmSpeeds: number;
  both: number;
  withoutSpeed: number;
  speedReadings: number;
  mean: number;
  squares: number;
  cubes: number;
}

function emptyPeriod(endMs: number): OpenPeriod {
  return {
    endMs,
    inUse: 0,
    samples: 0,
    calms: 0,
    calmSpeeds: 0,
    both: 0,
    withoutSpeed: 0,
    speedReadings: 0,
    mean: 0,
    squares: 0,
    cubes: 0,
  };
}
