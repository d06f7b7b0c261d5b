import { TEN_MINUTES_MS, type RoseSum } from '../../wind/index.ts';
import type { ReadingSlots } from './readingSlots.ts';

const HOUR_MS = 3_600_000;

/** What the classes of the roses are. */
interface Classes {
  readonly speedBoundsMPerS: readonly number[];
  readonly calmBelowMPerS: number;
  readonly utcOffsetMin: number;
}

/**
 * Counts readings by slot and speed class over an hour, and then hands them to the roses in a few large portions.
 *
 * A period belongs to the local hour that its middle lies in.
 */
export class RoseFeed {
  private readonly slots: ReadingSlots;
  private readonly roses: { readonly wind: readonly RoseSum[]; readonly vane: RoseSum };
  private readonly bounds: Float64Array;
  /** Speed classes; readings without a speed are one class more. [-] */
  readonly classes: number;
  /** Class that each whole speed begins in. [-] */
  private readonly begins: Uint8Array;
  private readonly offsetMs: number;
  /** A speed of each class that is no calm. [m/s] */
  private readonly speedOfClass: readonly number[];
  /** Readings by slot and class, those without a speed last; and which of them are used. */
  private readonly counts: Float64Array;
  private readonly used: Int32Array;
  private inUse = 0;
  private hour = NaN;
  private middleMs = NaN;
  private calms = 0;
  private withoutHeading = 0;

  constructor(
    slots: ReadingSlots,
    { speedBoundsMPerS, calmBelowMPerS, utcOffsetMin }: Classes,
    roses: { readonly wind: readonly RoseSum[]; readonly vane: RoseSum },
  ) {
    this.slots = slots;
    this.roses = roses;
    this.bounds = Float64Array.from(speedBoundsMPerS);
    this.classes = speedBoundsMPerS.length + 1;
    const highest = Math.ceil(speedBoundsMPerS.at(-1) ?? 0);
    this.begins = Uint8Array.from(
      { length: highest + 1 },
      (_, whole) => speedBoundsMPerS.filter((bound) => bound <= whole).length,
    );
    this.offsetMs = utcOffsetMin * 60_000;
    const least = Math.max(calmBelowMPerS, Number.MIN_VALUE);
    this.speedOfClass = [0, ...speedBoundsMPerS].map((bound) => Math.max(bound, least));
    this.counts = new Float64Array(slots.count * (this.classes + 1));
    this.used = new Int32Array(this.counts.length);
  }

  /** Says which period the next readings belong to. [ms UTC] */
  openPeriod(endMs: number): void {
    const middleMs = endMs - TEN_MINUTES_MS / 2;
    const hour = Math.floor((middleMs + this.offsetMs) / HOUR_MS);
    if (hour === this.hour) return;
    this.flush();
    this.hour = hour;
    this.middleMs = middleMs;
  }

  /** Class of a speed: a bound belongs to the class that begins there. [m/s] to [-] */
  classOf(speed: number): number {
    const { bounds, begins } = this;
    if (speed >= begins.length) return bounds.length;
    let speedClass = begins[speed | 0]!;
    while (speedClass < bounds.length && speed >= bounds[speedClass]!) speedClass++;
    return speedClass;
  }

  /** Counts readings of one slot and class: slot times the classes and one, plus the class. [-] */
  add(cell: number, readings: number): void {
    if (this.counts[cell] === 0) this.used[this.inUse++] = cell;
    this.counts[cell]! += readings;
  }

  closePeriod({ calms, withoutHeading }: { readonly calms: number; readonly withoutHeading: number }): void {
    this.calms += calms;
    this.withoutHeading += withoutHeading;
  }

  /** Hands everything counted so far to the roses. */
  flush(): void {
    const { slots, roses, counts, used, classes, middleMs } = this;
    for (let place = 0; place < this.inUse; place++) {
      const cell = used[place]!;
      const slot = Math.floor(cell / (classes + 1));
      const speedClass = cell - slot * (classes + 1);
      const [heading, half, weight] = [slots.headings[slot]!, slots.halfWidths[slot]!, counts[cell]!];
      if (speedClass === classes) {
        roses.vane.add(middleMs, heading, null, half, weight);
        for (const rose of roses.wind) rose.add(middleMs, heading, null, half, weight);
      } else {
        for (const rose of roses.wind) {
          rose.add(middleMs, heading, this.speedOfClass[speedClass]!, half, weight);
        }
      }
      counts[cell] = 0;
    }
    for (const rose of roses.wind) {
      if (this.calms > 0) rose.add(middleMs, null, 0, 0, this.calms);
      if (this.withoutHeading > 0) rose.add(middleMs, null, this.speedOfClass[0]!, 0, this.withoutHeading);
    }
    this.inUse = 0;
    this.calms = 0;
    this.withoutHeading = 0;
  }
}
