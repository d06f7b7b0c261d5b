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
  /** Of the period that is open: readings by slot and class, speeds by slot, and the cells in use. */
  private readonly cells: Float64Array;
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
    this.cells = new Float64Array(this.slots.count * (this.feed.classes + 1));
    this.speeds = new Float64Array(this.slots.count);
    this.used = new Int32Array(this.cells.length);
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
      to = firstAfter(atMs, from, this.open.endMs);
      this.feed.openPeriod(this.open.endMs);
      this.addRun(columns, from, to);
      this.gusts?.addColumns(columns, from, to);
    }
  }

  /** Sums of a run that lies in the open period: all in one go over its samples. */
  private addRun({ headingDeg, speedMPerS, read }: SampleColumns, from: number, to: number): void {
    const { cells, speeds, used, slots, open, feed } = this;
    const { calmBelowMPerS } = this.rule;
    const width = feed.classes + 1;
    let { inUse, calms, calmSpeeds, both, withoutSpeed, speedReadings, offsets, squares, cubes } = open;
    if (speedReadings === 0) open.near = firstSpeed(speedMPerS, read, from, to);
    const { near } = open;
    for (let i = from; i < to; i++) {
      const bits = read[i]!;
      const speed = speedMPerS[i]!;
      const hasSpeed = (bits & READ_SPEED) !== 0;
      if (hasSpeed) {
        // Away from a speed of the same ten minutes, so that a small deviation stays exact.
        const away = speed - near;
        speedReadings++;
        offsets += away;
        squares += away * away;
        cubes += speed * speed * speed;
        if (speed < calmBelowMPerS || speed === 0) {
          calms++;
          calmSpeeds += speed;
          continue;
        }
      }
      if ((bits & READ_HEADING) === 0) continue;
      const slot = (headingDeg[i]! * SLOTS_PER_DEG) | 0;
      const cell = slot * width + (hasSpeed ? feed.classOf(speed) : feed.classes);
      if (cells[cell]!++ === 0) {
        used[inUse++] = cell;
        slots.learn(slot, headingDeg[i]!);
      }
      if (hasSpeed) {
        both++;
        speeds[slot]! += speed;
      } else withoutSpeed++;
    }
    open.samples += to - from;
    Object.assign(open, {
      inUse,
      calms,
      calmSpeeds,
      both,
      withoutSpeed,
      speedReadings,
      offsets,
      squares,
      cubes,
    });
  }

  private closePeriod(): void {
    const { open, slots, cells, speeds, used, feed } = this;
    if (open.endMs === -Infinity) return;
    const width = feed.classes + 1;
    let [north, east, windNorth, windEast, windSpeeds] = [0, 0, 0, 0, open.calmSpeeds];
    for (let place = 0; place < open.inUse; place++) {
      const cell = used[place]!;
      const slot = Math.floor(cell / width);
      const count = cells[cell]!;
      north += count * slots.norths[slot]!;
      east += count * slots.easts[slot]!;
      windNorth += speeds[slot]! * slots.norths[slot]!;
      windEast += speeds[slot]! * slots.easts[slot]!;
      windSpeeds += speeds[slot]!;
      feed.add(cell, count);
      cells[cell] = 0;
      speeds[slot] = 0;
    }
    const { speedReadings, calms, both, withoutSpeed, near, offsets, squares, cubes } = open;
    const hasSpeed = speedReadings > 0;
    const beyond = offsets / speedReadings;
    feed.closePeriod({ calms, withoutHeading: speedReadings - calms - both });
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
      meanMPerS: hasSpeed ? near + beyond : null,
      deviationMPerS: hasSpeed ? Math.sqrt(Math.max(0, squares / speedReadings - beyond * beyond)) : null,
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
  /** A speed of the period, and how far all lie from it, summed and squared. [m/s] */
  near: number;
  offsets: number;
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
    near: 0,
    offsets: 0,
    squares: 0,
    cubes: 0,
  };
}

/** Place of the first instant after another, from a place on, by halving: instants rise. [ms UTC] to [-] */
function firstAfter(atMs: Float64Array, from: number, endMs: number): number {
  let [low, high] = [from, atMs.length];
  // A period seldom holds more rows than the next few thousand.
  for (let step = 1024; low + step < high; step *= 2) if (atMs[low + step]! > endMs) high = low + step;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (atMs[middle]! <= endMs) low = middle + 1;
    else high = middle;
  }
  return low;
}

/** First speed of a run; 0 where it has none. [m/s] */
function firstSpeed(speeds: Float64Array, read: Uint8Array, from: number, to: number): number {
  for (let i = from; i < to; i++) if ((read[i]! & READ_SPEED) !== 0) return speeds[i]!;
  return 0;
}
