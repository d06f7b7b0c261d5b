import {
  completeness,
  QUARTER_COMPLETE,
  TEN_MINUTES_MS,
  yearIsComplete,
  type Completeness,
  type Counted,
} from '../../wind/index.ts';
import type { ReviewPeriod } from '../sum/reviewPeriod.ts';

const DAY_MS = 86_400_000;

/** What one day of UTC held. */
export interface DayCoverage extends Completeness {
  /** [ms UTC] */
  readonly startMs: number;
}

/** What a calendar quarter held. */
export interface QuarterCoverage extends Completeness {
  /** `2026 Q1` */
  readonly name: string;
  /** Whether speed, direction and both reach 90 %. */
  readonly isComplete: boolean;
  /** Whether the review covers the whole quarter. */
  readonly isWhole: boolean;
}

/** How much of the time asked for was there. */
export interface Coverage {
  readonly days: readonly DayCoverage[];
  readonly quarters: readonly QuarterCoverage[];
  readonly whole: Completeness;
  /** Readings that the clock expects of the whole span. [-] */
  readonly expected: number;
  /** Whether any four quarters in a row are complete, so that they may stand for a year. */
  readonly hasCompleteYear: boolean;
}

interface Count {
  speed: number;
  heading: number;
  both: number;
}

/** Counts of usable samples by day. */
function dayCounts(periods: readonly ReviewPeriod[]): Map<number, Count> {
  const counts = new Map<number, Count>();
  for (const { endMs, speedReadings, headingReadings, bothReadings } of periods) {
    const day = Math.floor((endMs - 1) / DAY_MS) * DAY_MS; // a midnight label closes the day before it
    const count = counts.get(day) ?? { speed: 0, heading: 0, both: 0 };
    count.speed += speedReadings;
    count.heading += headingReadings;
    count.both += bothReadings;
    counts.set(day, count);
  }
  return counts;
}

function quarterStart(atMs: number, quartersOn = 0): number {
  const date = new Date(atMs);
  return Date.UTC(date.getUTCFullYear(), 3 * (Math.floor(date.getUTCMonth() / 3) + quartersOn));
}

/** Counts of a stretch within a span; whole days, cut by the span. */
function counted(
  counts: ReadonlyMap<number, Count>,
  [fromMs, untilMs]: readonly [number, number],
  intervalMs: number,
): Counted {
  const sum = { expected: (untilMs - fromMs) / intervalMs, speed: 0, heading: 0, both: 0 };
  for (let day = Math.floor(fromMs / DAY_MS) * DAY_MS; day < untilMs; day += DAY_MS) {
    const count = counts.get(day);
    if (!count) continue;
    sum.speed += count.speed;
    sum.heading += count.heading;
    sum.both += count.both;
  }
  return sum;
}

/**
 * Coverage day by day, quarter by quarter and as a whole, against the clock.
 *
 * @param periods - Ten-minute periods.
 * @param span - First instant and end of the time that is reviewed, and the time between two samples. [ms UTC], [ms]
 * @source EPA-454/R-99-005 (2000), section 5.3.2 (90 % a quarter, each alone and both together).
 * @check src/core/review/figures/coverage.test.ts
 */
export function coverageOf(
  periods: readonly ReviewPeriod[],
  span: { readonly fromMs: number; readonly untilMs: number; readonly intervalMs: number },
): Coverage {
  const { fromMs, intervalMs } = span;
  const untilMs = Math.max(span.untilMs, fromMs + Math.min(TEN_MINUTES_MS, intervalMs));
  const counts = dayCounts(periods);
  const within = (from: number, until: number): Counted =>
    counted(counts, [Math.max(from, fromMs), Math.min(until, untilMs)], intervalMs);
  const days: DayCoverage[] = [];
  for (let day = Math.floor(fromMs / DAY_MS) * DAY_MS; day < untilMs; day += DAY_MS) {
    days.push({ startMs: day, ...completeness(within(day, day + DAY_MS)) });
  }
  const quarters: (QuarterCoverage & { readonly counted: Counted })[] = [];
  for (let start = quarterStart(fromMs); start < untilMs; start = quarterStart(start, 1)) {
    const end = quarterStart(start, 1);
    const whole = { ...within(start, end), expected: (end - start) / intervalMs };
    const shares = completeness(whole);
    quarters.push({
      name: `${new Date(start).getUTCFullYear()} Q${new Date(start).getUTCMonth() / 3 + 1}`,
      ...shares,
      isComplete: Math.min(shares.speed, shares.heading, shares.both) >= QUARTER_COMPLETE,
      isWhole: start >= fromMs && end <= untilMs,
      counted: whole,
    });
  }
  const all = within(fromMs, untilMs);
  return {
    days,
    quarters: quarters.map(({ counted: _, ...quarter }) => quarter),
    whole: completeness(all),
    expected: all.expected,
    hasCompleteYear: quarters.some(
      (_, i) => yearIsComplete(quarters.slice(i, i + 4).map((quarter) => quarter.counted)).complete,
    ),
  };
}
