import type { Degrees } from '../../units/index.ts';
import { smallestArc } from '../direction/smallestArc.ts';
import { requireAtLeast, timeNotRising } from '../refusal.ts';
import type { QualityFlag, QualitySpan } from './qualityFlag.ts';

/** Means of an hour, or of ten minutes, as they are checked. */
export interface ScreenedPeriod {
  /** End of the period. [ms UTC] */
  readonly endMs: number;
  /** `null` = not known, or calm. [deg] */
  readonly headingDeg: Degrees | null;
  /** `null` = not known. [m/s] */
  readonly speedMPerS: number | null;
}

const HOUR_MS = 3_600_000;
const EPA = 'EPA-454/R-99-005, Table 8-4';

interface FlatRule {
  readonly flag: QualityFlag;
  readonly hours: number;
  /** Least change that is accepted over those hours. [m/s] or [deg] */
  readonly change: number;
  readonly unit: string;
}

/** Hours that may not pass without change; "more than 3 hours" is taken as 4. [m/s], [deg] */
const SPEED_RULES: readonly FlatRule[] = [
  { flag: 'speed-stuck', hours: 3, change: 0.1, unit: 'm/s' },
  { flag: 'speed-stuck', hours: 12, change: 0.5, unit: 'm/s' },
];
const HEADING_RULES: readonly FlatRule[] = [
  { flag: 'heading-stuck', hours: 4, change: 1, unit: '°' },
  { flag: 'heading-stuck', hours: 18, change: 10, unit: '°' },
];

/** Speed of an hour above which it is looked at. [m/s] */
const HOUR_MOST_M_PER_S = 25;

/**
 * Screens hourly means by the published rules: range, and hours that hardly change.
 *
 * A flag asks for a look at the data and deletes nothing. Hours that are missing break a run.
 *
 * @param hours - In order of time.
 * @returns Stretches with a flag, by rule and then by time.
 * @throws `wind/time-not-rising` when the hours are not in order.
 * @source EPA-454/R-99-005 (2000), section 8.6.3, Table 8-4.
 * @check test/published/epa-454-r-99-005/screening.test.ts
 */
export function screenHours(hours: readonly ScreenedPeriod[]): QualitySpan[] {
  for (const [i, { endMs }] of hours.entries()) {
    if (i > 0 && endMs <= hours[i - 1]!.endMs) throw timeNotRising('screenHours', hours[i - 1]!.endMs, endMs);
  }
  const speeds = hours.map(({ speedMPerS }) => speedMPerS);
  const headings = hours.map(({ headingDeg }) => headingDeg);
  return [
    ...outOfRange(hours, speeds, 'speed-range', { most: HOUR_MOST_M_PER_S, unit: 'm/s' }),
    ...outOfRange(hours, headings, 'heading-range', { most: 360, unit: '°' }),
    ...SPEED_RULES.flatMap((rule) => flatStretches(hours, speeds, rule, plainRange)),
    ...HEADING_RULES.flatMap((rule) =>
      flatStretches(hours, headings, rule, (run) => smallestArc(run).rangeDeg),
    ),
  ];
}

function plainRange(values: readonly number[]): number {
  return Math.max(...values) - Math.min(...values);
}

function outOfRange(
  hours: readonly ScreenedPeriod[],
  values: readonly (number | null)[],
  flag: QualityFlag,
  { most, unit }: { readonly most: number; readonly unit: string },
): QualitySpan[] {
  return hours.flatMap(({ endMs }, i) => {
    const value = values[i]!;
    if (value === null || (value >= 0 && value <= most)) return [];
    const [got, allowed] = [`${value} ${unit}`, `0..${most} ${unit}`];
    return [{ flag, fromMs: endMs, toMs: endMs, got, allowed, source: EPA }];
  });
}

/** Stretches in which every run of so many hours changes no more than the rule says; runs that touch are joined. */
function flatStretches(
  hours: readonly ScreenedPeriod[],
  values: readonly (number | null)[],
  rule: FlatRule,
  changeOf: (run: readonly number[]) => number,
): QualitySpan[] {
  const stretches: { first: number; last: number }[] = [];
  for (let last = rule.hours - 1; last < hours.length; last++) {
    const first = last - rule.hours + 1;
    const run = values.slice(first, last + 1);
    const whole = run.every((value) => value !== null && Number.isFinite(value));
    const unbroken = hours[last]!.endMs - hours[first]!.endMs === (rule.hours - 1) * HOUR_MS;
    if (!whole || !unbroken || changeOf(run as number[]) > rule.change) continue;
    const open = stretches.at(-1);
    if (open && open.last >= first) open.last = last;
    else stretches.push({ first, last });
  }
  return stretches.map(({ first, last }) => ({
    flag: rule.flag,
    fromMs: hours[first]!.endMs,
    toMs: hours[last]!.endMs,
    got: `${rule.change} ${rule.unit} or less of change for ${last - first + 1} h`,
    allowed: `more than ${rule.change} ${rule.unit} within ${rule.hours} h`,
    source: EPA,
  }));
}

/** Ten minutes or an hour with its spread and gust. */
export interface ScreenedSpread extends ScreenedPeriod {
  /** [m/s] */
  readonly speedDeviationMPerS: number | null;
  /** [m/s] */
  readonly gustMPerS: number | null;
  /** Spread of direction. [deg] */
  readonly spreadDeg: Degrees | null;
}

/** Limits of a single period: above the low one, below the high one. [m/s], [deg] */
const WITHIN = [
  { part: 'speedMPerS', flag: 'speed-range', low: 0, high: 25, unit: 'm/s', name: 'mean speed' },
  {
    part: 'speedDeviationMPerS',
    flag: 'speed-range',
    low: 0,
    high: 3,
    unit: 'm/s',
    name: 'deviation of speed',
  },
  { part: 'gustMPerS', flag: 'speed-range', low: 0, high: 30, unit: 'm/s', name: 'gust' },
  { part: 'spreadDeg', flag: 'heading-range', low: 3, high: 75, unit: '°', name: 'spread of direction' },
] as const;

/**
 * Screens one period of 10 minutes or an hour by its mean, deviation, gust and spread of direction.
 *
 * A spread of direction of 3° or less is how an iced or stuck vane shows; a calm period fails it too, so that
 * periods that are calm should not be passed in.
 *
 * @param period - Means and spreads; `null` parts are not checked.
 * @param offsetMPerS - Lowest speed that the cups can show, their offset. [m/s], ≥ 0
 * @throws `wind/bad-reading` when the offset is negative or not finite.
 * @source NREL, Wind Resource Assessment Handbook (1997), as quoted by P. Jain, Wind Energy Engineering, Table 6-4.
 * @check test/published/epa-454-r-99-005/screening.test.ts
 */
export function screenPeriod(period: ScreenedSpread, offsetMPerS: number): QualitySpan[] {
  requireAtLeast(offsetMPerS, 0, 'screenPeriod(offsetMPerS)', 'm/s');
  return WITHIN.flatMap(({ part, flag, low, high, unit, name }) => {
    const value = period[part];
    const least = part === 'speedMPerS' || part === 'gustMPerS' ? offsetMPerS : low;
    if (value === null || (value > least && value < high)) return [];
    return [
      {
        flag,
        fromMs: period.endMs,
        toMs: period.endMs,
        got: `${name} of ${value} ${unit}`,
        allowed: `above ${least} ${unit} and below ${high} ${unit}`,
        source: 'NREL handbook (1997), table quoted by Jain, Table 6-4',
      },
    ];
  });
}
