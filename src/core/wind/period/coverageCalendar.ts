import { badReading, differentLayout, requirePositive } from '../refusal.ts';
import { type Counted } from './completeness.ts';

/** A day. [ms] */
const DAY_MS = 86_400_000;

/** What one day held. */
export interface CoveredDay extends Counted {
  /** Start of the day in UTC. [ms UTC] */
  readonly startMs: number;
}

interface DayCount {
  speed: number;
  heading: number;
  both: number;
}

/**
 * Counts of usable samples day by day (UTC), against what the clock expects; memory grows with days only.
 *
 * A sample on the stroke of midnight belongs to the day that ends there, as everywhere in the periods.
 *
 * @source EPA-454/R-99-005 (2000), sections 5.3.2 and 7.1.
 * @check src/core/wind/period/coverageCalendar.test.ts
 */
export class CoverageCalendar {
  private readonly intervalMs: number;
  private readonly byDay = new Map<number, DayCount>();
  private day = NaN;
  private count: DayCount = { speed: 0, heading: 0, both: 0 };

  /** @param intervalMs - Time between two samples. [ms], > 0 */
  constructor(intervalMs: number) {
    requirePositive(intervalMs, 'CoverageCalendar(intervalMs)', 'ms');
    this.intervalMs = intervalMs;
  }

  /**
   * @param atMs - Instant of the sample. [ms UTC]
   * @param usable - Which parts of the sample can be used; a calm has a usable direction.
   * @throws `wind/bad-reading` when the time is not finite.
   */
  add(atMs: number, usable: { readonly speed: boolean; readonly heading: boolean }): void {
    if (!Number.isFinite(atMs)) throw badReading('CoverageCalendar.add(atMs)', atMs, 'a finite time in ms');
    const day = Math.ceil(atMs / DAY_MS) - 1;
    if (day !== this.day) this.open(day);
    if (usable.speed) this.count.speed++;
    if (usable.heading) this.count.heading++;
    if (usable.speed && usable.heading) this.count.both++;
  }

  private open(day: number): void {
    this.day = day;
    this.count = this.byDay.get(day) ?? { speed: 0, heading: 0, both: 0 };
    this.byDay.set(day, this.count);
  }

  /**
   * Takes in another calendar, of any other time.
   *
   * @throws `wind/different-layout` when its interval is another.
   */
  merge(other: CoverageCalendar): void {
    if (other.intervalMs !== this.intervalMs) {
      const [theirs, mine] = [other, this].map(({ intervalMs }) => `samples every ${intervalMs} ms`);
      throw differentLayout('CoverageCalendar.merge(other)', theirs!, mine!);
    }
    for (const [day, { speed, heading, both }] of other.byDay) {
      this.open(day);
      this.count.speed += speed;
      this.count.heading += heading;
      this.count.both += both;
    }
  }

  /**
   * Every day of a span, those without any sample too.
   *
   * @param fromMs - First instant of the span; its whole day is given. [ms UTC]
   * @param untilMs - End of the span, not part of it. [ms UTC]
   * @throws `wind/bad-reading` when a bound is not finite.
   */
  days(fromMs: number, untilMs: number): CoveredDay[] {
    for (const bound of [fromMs, untilMs]) {
      if (!Number.isFinite(bound)) throw badReading('CoverageCalendar.days', bound, 'a finite time in ms');
    }
    const days: CoveredDay[] = [];
    for (let day = Math.floor(fromMs / DAY_MS); day * DAY_MS < untilMs; day++) {
      const count = this.byDay.get(day) ?? { speed: 0, heading: 0, both: 0 };
      days.push({ startMs: day * DAY_MS, expected: DAY_MS / this.intervalMs, ...count });
    }
    return days;
  }

  /**
   * Counts of a whole span of days taken together.
   *
   * @param fromMs - First instant of the span. [ms UTC]
   * @param untilMs - End of the span, not part of it. [ms UTC]
   * @returns Counts; `expected` is 0 for an empty span. [-]
   */
  span(fromMs: number, untilMs: number): Counted {
    return this.days(fromMs, untilMs).reduce(
      (sum, day) => ({
        expected: sum.expected + day.expected,
        speed: sum.speed + day.speed,
        heading: sum.heading + day.heading,
        both: sum.both + day.both,
      }),
      { expected: 0, speed: 0, heading: 0, both: 0 },
    );
  }
}
