import { badSetting, requireFinite } from '../refusal.ts';

/**
 * What shall count the same in spite of gaps: nothing (every reading does), hours of the day, seasons, months,
 * or each hour of each season or month.
 */
export type EqualWeight = 'reading' | 'hour' | 'season' | 'month' | 'hour-of-season' | 'hour-of-month';

const HOUR_MS = 3_600_000;
const DAY_MS = 24 * HOUR_MS;

const PARTS: Record<EqualWeight, { readonly hours: 1 | 24; readonly dates: 1 | 4 | 12 }> = {
  reading: { hours: 1, dates: 1 },
  hour: { hours: 24, dates: 1 },
  season: { hours: 1, dates: 4 },
  month: { hours: 1, dates: 12 },
  'hour-of-season': { hours: 24, dates: 4 },
  'hour-of-month': { hours: 24, dates: 12 },
};

/** Every choice of what counts the same. */
export const equalWeights = Object.keys(PARTS) as readonly EqualWeight[];

/**
 * Sorts instants into the strata that shall count the same; seasons begin with December, March, June, September.
 *
 * @source Definition; quarters of the year as climatology cuts them (common practice, no source).
 * @check src/core/wind/rose/stratum.test.ts
 */
export class StratumClock {
  /** Number of strata. [-] */
  readonly count: number;
  private readonly hours: number;
  private readonly dates: number;
  private readonly offsetMs: number;
  private hourFromMs = Infinity;
  private hourIndex = 0;

  /**
   * @param weight - What shall count the same.
   * @param utcOffsetMin - Local time less UTC, for hours of the day; no summer time. [min]
   * @throws `wind/bad-setting` for a choice that is none; `wind/bad-reading` when the offset is not finite.
   */
  constructor(weight: EqualWeight, utcOffsetMin: number) {
    requireFinite(utcOffsetMin, 'StratumClock(utcOffsetMin)', '[min]');
    const parts = PARTS[weight] as (typeof PARTS)[EqualWeight] | undefined;
    if (parts === undefined) {
      throw badSetting('layout.equalWeight', weight, equalWeights.join(', '), 'Use reading.');
    }
    const { hours, dates } = parts;
    this.hours = hours;
    this.dates = dates;
    this.count = hours * dates;
    this.offsetMs = utcOffsetMin * 60_000;
  }

  /** Stratum of an instant [ms UTC], in 0..count-1: date part first, then hour. */
  indexOf(atMs: number): number {
    if (this.count === 1) return 0;
    const local = atMs + this.offsetMs;
    const isSameHour = local >= this.hourFromMs && local < this.hourFromMs + HOUR_MS;
    if (!isSameHour) this.openHour(local);
    return this.hourIndex;
  }

  /** End of the stretch of time that shares the stratum of the last instant asked for. [ms UTC] */
  get untilMs(): number {
    return this.count === 1 ? Infinity : this.hourFromMs + HOUR_MS - this.offsetMs;
  }

  private openHour(local: number): void {
    const hour = Math.floor(local / HOUR_MS);
    const day = Math.floor(hour / 24);
    this.hourFromMs = hour * HOUR_MS;
    const datePart = this.dates === 1 ? 0 : datePartOf(day, this.dates);
    this.hourIndex = this.hours === 1 ? datePart : datePart * 24 + (hour - 24 * day);
  }
}

function datePartOf(day: number, dates: number): number {
  const month = new Date(day * DAY_MS).getUTCMonth();
  return dates === 12 ? month : Math.floor(((month + 1) % 12) / 3);
}
