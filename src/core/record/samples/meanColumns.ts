import { csvField } from './archiveColumns.ts';

/** Means of one period, as `PeriodStream` gives them. */
export interface MeansOfPeriod {
  /** [ms UTC] */
  readonly endMs: number;
  readonly heading: { readonly headingDeg: number | null; readonly agreement: number } | null;
  readonly spreadDeg: number | null;
  readonly speed: {
    readonly meanMPerS: number;
    readonly deviationMPerS: number;
    readonly leastMPerS: number;
    readonly mostMPerS: number;
  } | null;
  readonly gust: { readonly speedMPerS: number } | null;
  readonly headingReadings: number;
  readonly speedReadings: number;
  readonly calms: number;
}

type MeanField = readonly [name: string, value: (period: MeansOfPeriod) => string | number | null];

/** Columns of a table of means; names end in their unit, and directions are where the wind comes from. */
const meanColumns: readonly MeanField[] = [
  ['end_time', ({ endMs }) => new Date(endMs).toISOString()],
  ['wind_from_direction_deg', ({ heading }) => heading?.headingDeg ?? null],
  ['agreement', ({ heading }) => heading?.agreement ?? null],
  ['direction_spread_deg', ({ spreadDeg }) => spreadDeg],
  ['wind_speed_m_s', ({ speed }) => speed?.meanMPerS ?? null],
  ['wind_speed_deviation_m_s', ({ speed }) => speed?.deviationMPerS ?? null],
  ['wind_speed_least_m_s', ({ speed }) => speed?.leastMPerS ?? null],
  ['wind_speed_most_m_s', ({ speed }) => speed?.mostMPerS ?? null],
  ['wind_speed_of_gust_m_s', ({ gust }) => gust?.speedMPerS ?? null],
  ['direction_readings', ({ headingReadings }) => headingReadings],
  ['speed_readings', ({ speedReadings }) => speedReadings],
  ['calms', ({ calms }) => calms],
];

/**
 * Means of ten minutes as lines of RFC 4180; an empty field was not read, and is never 0.
 *
 * @param periods - In order. [deg], [m/s], [ms UTC]; n ≥ 0
 * @param isFirst - Whether the heading line goes in front.
 * @source RFC 4180 (2005)
 * @check src/app/thinRecord.test.ts
 */
export function csvText10Min(periods: readonly MeansOfPeriod[], isFirst: boolean): string {
  const line = (fields: readonly (string | number | null)[]): string =>
    `${fields.map(csvField).join(',')}\r\n`;
  const heading = isFirst ? line(meanColumns.map(([name]) => name)) : '';
  return heading + periods.map((period) => line(meanColumns.map(([, value]) => value(period)))).join('');
}
