import type { LiveWind, Logging, OutlinePoint } from '../../app/api.ts';
import { documentOf } from '../server/askServer.ts';

/** One station as the record knows it. [ms UTC] */
export interface Station {
  readonly station: string;
  readonly samples: number;
  readonly firstMs: number;
  readonly lastMs: number;
}

/** A sample as the server tells it. */
export interface SeenSample {
  readonly atMs: number;
  readonly headingDeg: number | null;
  readonly halfWidthDeg: number | null;
  readonly speedMPerS: number | null;
  readonly flags: number;
  readonly word: string | null;
}

/** How the record stands. */
export interface RecordState {
  readonly name: string;
  readonly logging: Logging;
  readonly stations: readonly Station[];
  readonly ledger: readonly { readonly reason: string; readonly count: number }[];
}

/** How the record stands now. @throws Refused, Away */
export async function recordState(): Promise<RecordState> {
  const [record, stations, ledger] = await Promise.all([
    documentOf<Pick<RecordState, 'name' | 'logging'>>('record'),
    documentOf<RecordState['stations']>('stations'),
    documentOf<RecordState['ledger']>('ledger'),
  ]);
  return { ...record, stations, ledger };
}

const below = (station: string, what: string): string => `stations/${encodeURIComponent(station)}/${what}`;

/** Samples from an instant on, oldest first. @throws Refused, Away */
export async function samplesSince(station: string, sinceMs: number): Promise<readonly SeenSample[]> {
  const all: SeenSample[] = [];
  for (let from: number | null = sinceMs; from !== null;) {
    const query = new URLSearchParams({ sinceMs: String(from) });
    const part: { samples: SeenSample[]; nextSinceMs: number | null } = await documentOf(
      `${below(station, 'samples')}?${query}`,
    );
    all.push(...part.samples);
    from = part.nextSinceMs;
  }
  return all;
}

/** Every day with samples. @throws Refused, Away */
export function daysOf(station: string): Promise<readonly OutlinePoint[]> {
  return documentOf(below(station, 'days'));
}

/** A stretch of a station in at most so many points. @throws Refused, Away */
export function seriesOf(
  station: string,
  window: { readonly sinceMs: number; readonly untilMs: number },
  most: number,
): Promise<{ readonly stepMs: number; readonly points: readonly OutlinePoint[] }> {
  const query = new URLSearchParams({
    sinceMs: String(window.sinceMs),
    untilMs: String(window.untilMs),
    most: String(most),
  });
  return documentOf(`${below(station, 'series')}?${query}`);
}

export type { LiveWind, OutlinePoint };
