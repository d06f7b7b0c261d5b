import {
  expectedReadings,
  READ_HEADING,
  READ_SPEED,
  TEN_MINUTES_MS,
  type SampleColumns,
} from '../core/wind/index.ts';
import { sampleIntervalMs } from '../core/review/index.ts';
import type { RecordReading } from '../ports/index.ts';

/** Ten minutes of a record, as sums. */
interface Period {
  samples: number;
  headings: number;
  north: number;
  east: number;
  speeds: number;
  speedSum: number;
  speedMost: number;
}

/** A stretch of a record as one point of a series. */
export interface OutlinePoint {
  /** Its end. [ms UTC] */
  readonly atMs: number;
  /** Readings of a heading that came, of those that should have. [-], 0..1 */
  readonly coverage: number;
  /** Direction of the sum of unit vectors; `null` without headings, or where they cancel out. [deg] */
  readonly headingDeg: number | null;
  /** [m/s] */
  readonly meanMPerS: number | null;
  readonly mostMPerS: number | null;
}

const DAY_MS = 86_400_000;
const PERIODS_OF_DAY = DAY_MS / TEN_MINUTES_MS;
/** Below this agreement a direction is noise. [-] */
const NO_AGREEMENT = 1e-9;

const empty = (): Period => ({
  samples: 0,
  headings: 0,
  north: 0,
  east: 0,
  speeds: 0,
  speedSum: 0,
  speedMost: 0,
});

function add(into: Period, other: Period): void {
  into.samples += other.samples;
  into.headings += other.headings;
  into.north += other.north;
  into.east += other.east;
  into.speeds += other.speeds;
  into.speedSum += other.speedSum;
  into.speedMost = Math.max(into.speedMost, other.speedMost);
}

function pointOf(sum: Period, atMs: number, expected: number): OutlinePoint {
  const { headings, north, east, speeds, speedSum, speedMost } = sum;
  const isAgreed = headings > 0 && Math.hypot(north, east) / headings > NO_AGREEMENT;
  const headingDeg = (Math.atan2(east, north) * 180) / Math.PI;
  return {
    atMs,
    coverage: Math.min(1, headings / expected),
    headingDeg: isAgreed ? (headingDeg + 360) % 360 : null,
    meanMPerS: speeds > 0 ? speedSum / speeds : null,
    mostMPerS: speeds > 0 ? speedMost : null,
  };
}

/** A whole record in ten-minute sums: small enough to keep for years, and to draw any stretch of them at once. */
export class RecordOutline {
  readonly #store: RecordReading;
  readonly #station: string;
  /** By number of the period, counted from 1970; a period holds what came after its start and up to its end. */
  readonly #periods = new Map<number, Period>();
  #intervalMs: number | null = null;
  #first = Infinity;
  #last = -Infinity;
  #reading: Promise<void> | null = null;

  constructor(store: RecordReading, station: string) {
    this.#store = store;
    this.#station = station;
  }

  /** Reads what has come since the last time. */
  async refresh(): Promise<void> {
    this.#reading ??= this.#read().finally(() => (this.#reading = null));
    await this.#reading;
  }

  async #read(): Promise<void> {
    // The last period may have been read in part, so it is read again.
    const fromMs = Number.isFinite(this.#last) ? (this.#last - 1) * TEN_MINUTES_MS + 1 : -8.64e15;
    this.#periods.delete(this.#last);
    const window = { station: this.#station, fromMs, untilMs: 8.64e15 };
    for await (const columns of this.#store.columns(window)) this.#add(columns);
  }

  #add({ atMs, headingDeg, speedMPerS, read }: SampleColumns): void {
    this.#intervalMs ??= sampleIntervalMs(atMs);
    let number = NaN;
    let period = empty();
    for (let i = 0; i < atMs.length; i++) {
      const own = Math.ceil(atMs[i]! / TEN_MINUTES_MS);
      if (own !== number) {
        number = own;
        period = this.#periods.get(own) ?? empty();
        this.#periods.set(own, period);
        this.#first = Math.min(this.#first, own);
        this.#last = Math.max(this.#last, own);
      }
      period.samples++;
      if (read[i]! & READ_HEADING) {
        const angle = (headingDeg[i]! * Math.PI) / 180;
        period.headings++;
        period.north += Math.cos(angle);
        period.east += Math.sin(angle);
      }
      if (read[i]! & READ_SPEED) {
        period.speeds++;
        period.speedSum += speedMPerS[i]!;
        if (speedMPerS[i]! > period.speedMost) period.speedMost = speedMPerS[i]!;
      }
    }
  }

  /** Sum of some periods in a row; `null` when none of them holds a sample. */
  #sum(from: number, count: number): Period | null {
    const sum = empty();
    for (let i = from; i < from + count; i++) {
      const period = this.#periods.get(i);
      if (period) add(sum, period);
    }
    return sum.samples > 0 ? sum : null;
  }

  #expected(periods: number): number {
    return periods * expectedReadings(TEN_MINUTES_MS, this.#intervalMs ?? TEN_MINUTES_MS);
  }

  /** Every day of the record that holds samples; days end at midnight UTC. */
  days(): OutlinePoint[] {
    const points: OutlinePoint[] = [];
    const firstDay = Math.floor((this.#first - 1) / PERIODS_OF_DAY);
    for (let day = firstDay; day * PERIODS_OF_DAY < this.#last; day++) {
      const sum = this.#sum(day * PERIODS_OF_DAY + 1, PERIODS_OF_DAY);
      if (sum) points.push(pointOf(sum, (day + 1) * DAY_MS, this.#expected(PERIODS_OF_DAY)));
    }
    return points;
  }

  /**
   * A stretch of the record in so many points or fewer.
   *
   * @param window - After its start and up to its end. [ms UTC]
   * @param most - [-]
   */
  series(window: { readonly sinceMs: number; readonly untilMs: number }, most: number) {
    const from = Math.max(this.#first, Math.floor(window.sinceMs / TEN_MINUTES_MS) + 1);
    const last = Math.min(this.#last, Math.ceil(window.untilMs / TEN_MINUTES_MS));
    const count = Math.max(1, Math.ceil((last - from + 1) / most));
    const points: OutlinePoint[] = [];
    for (let at = from; at <= last; at += count) {
      const sum = this.#sum(at, count);
      if (sum) points.push(pointOf(sum, (at + count - 1) * TEN_MINUTES_MS, this.#expected(count)));
    }
    return { stepMs: count * TEN_MINUTES_MS, points };
  }
}
