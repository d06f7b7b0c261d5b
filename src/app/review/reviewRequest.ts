import { VanewrightError, type Problem } from '../../core/error/index.ts';
import type { EqualWeight } from '../../core/wind/index.ts';
import type { SampleWindow, StationSpan } from '../../ports/index.ts';
import { periodOfWords } from './wordedPeriod.ts';

/** What to review, and how. */
export interface ReviewRequest {
  /** Path of the instrument file. */
  readonly path: string;
  /** `null` takes the instrument's own, or the only one of the store. */
  readonly station: string | null;
  /** Not included, as it ends the time before; `null` for the beginning. [ms UTC] */
  readonly sinceMs: number | null;
  /** Included; `null` for the end. [ms UTC] */
  readonly untilMs: number | null;
  /** A station, or a period such as `2026-03` or `2026-01-01/2026-02-01`; `null` for nothing. */
  readonly against: string | null;
  /** Sectors of the rose. [-] */
  readonly sectors: number;
  readonly equalWeight: EqualWeight;
  /** Local time less UTC, for hours of the day and months. [min] */
  readonly utcOffsetMin: number;
  /** Calm threshold; `null` takes what cups and vane need to start. [m/s] */
  readonly calmBelowMPerS: number | null;
  readonly out: string;
}

const dayText = (atMs: number): string => new Date(atMs).toISOString().slice(0, 16).replace('T', ' ');

const listed = (stations: readonly StationSpan[]): string =>
  stations
    .map(({ station, firstMs, lastMs }) => `${station} (${dayText(firstMs)} to ${dayText(lastMs)} UTC)`)
    .join(', ') || 'none';

export function noStation(got: string, where: string, stations: readonly StationSpan[]): Problem {
  const [first] = stations;
  return {
    code: 'review/no-station',
    what: first ? 'The store has no such station.' : 'The store holds no samples yet.',
    where,
    got,
    allowed: `one of: ${listed(stations)}`,
    fix: first
      ? `Use ${where} "${first.station}".`
      : 'Fill it with: vanewright log FILE --from SOURCE --store STORE',
  };
}

/** Station that is meant, among those of the store. */
export function stationOf(
  stations: readonly StationSpan[],
  wanted: string,
  isSaid: boolean,
): StationSpan | null {
  const found = stations.find(({ station }) => station === wanted);
  return found ?? (!isSaid && stations.length === 1 ? stations[0]! : null);
}

export function noSamples(
  window: SampleWindow,
  where: string,
  stations: readonly StationSpan[],
): VanewrightError {
  const own = stations.filter(({ station }) => station === window.station);
  return new VanewrightError({
    code: 'review/no-samples',
    what: 'The store holds no sample of that time.',
    where,
    got: `${window.station}: 0 samples from ${dayText(window.fromMs)} to ${dayText(window.untilMs)} UTC`,
    allowed: `a time within: ${listed(own)}`,
    fix: `Use --since ${dayText(own[0]!.firstMs).slice(0, 10)}, or leave --since and --until out.`,
  });
}

/** Window of what a review is compared with, and its words. */
export interface Against {
  readonly window: SampleWindow;
  readonly words: string;
}

export function againstOf(
  against: string | null,
  window: SampleWindow,
  stations: readonly StationSpan[],
): Against | Problem | null {
  if (against === null) return null;
  if (stations.some(({ station }) => station === against)) {
    return { window: { ...window, station: against }, words: `station ${against}` };
  }
  const period = periodOfWords(against);
  if (period) return { window: { ...window, ...period }, words: against };
  return {
    code: 'review/against',
    what: 'What to compare with is neither a station of the store nor a period.',
    where: '--against',
    got: against,
    allowed: `a period such as 2026, 2026-03, 2026-03-01 or 2026-03-01/2026-04-01, or one of: ${listed(stations)}`,
    fix: 'Use --against 2026-03',
  };
}

export function windowProblem({
  sinceMs,
  untilMs,
}: Pick<ReviewRequest, 'sinceMs' | 'untilMs'>): Problem | null {
  if (sinceMs === null || untilMs === null || sinceMs < untilMs) return null;
  return {
    code: 'review/since-after-until',
    what: 'The time to review ends before it begins.',
    where: '--since, --until',
    got: `since ${dayText(sinceMs)}, until ${dayText(untilMs)} UTC`,
    allowed: '--since earlier than --until',
    fix: `Use --since ${dayText(untilMs).slice(0, 10)} --until ${dayText(sinceMs + 86_400_000).slice(0, 10)}`,
  };
}
