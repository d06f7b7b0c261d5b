import type { Sample } from '../core/record/index.ts';
import { GUST_WINDOW_MS, GustSum, PeriodSum, REPORTED_CALM_M_PER_S, type Gust } from '../core/wind/index.ts';

/** Mean wind of the last minutes. */
export interface LiveMean {
  /** Direction of the mean of unit vectors; `null` = calm, not read, or no agreement. [deg] */
  readonly headingDeg: number | null;
  readonly agreement: number | null;
  readonly spreadDeg: number | null;
  readonly speedMPerS: number | null;
  /** [-] */
  readonly samples: number;
  readonly calms: number;
}

/** Wind at a station just now. */
export interface LiveWind {
  readonly station: string;
  /** Instant of the last sample. [ms UTC] */
  readonly atMs: number;
  readonly headingDeg: number | null;
  /** Largest error of that heading; `null` where the instrument does not tell it. [deg] */
  readonly halfWidthDeg: number | null;
  readonly speedMPerS: number | null;
  /** Bits of `sampleFlags`. [-] */
  readonly flags: number;
  /** What the channels read last. */
  readonly word: string | null;
  /** Highest 3 s mean of the last ten minutes. [m/s], [ms UTC] */
  readonly gust: Gust | null;
  /** For wind that is used now, as at an airfield. */
  readonly twoMinutes: LiveMean;
  /** For reports. */
  readonly tenMinutes: LiveMean;
}

const TWO_MINUTES_MS = 120_000;
const TEN_MINUTES_MS = 600_000;
/** Samples kept of a station: ten minutes at 100 a second; faster ones push older ones out. [-] */
const KEPT_MOST = 60_000;

type Kept = Pick<
  Sample,
  'atMs' | 'headingDeg' | 'halfWidthDeg' | 'speedMPerS' | 'gustMPerS' | 'flags' | 'word'
>;

/** Samples of the last ten minutes of one station. */
class Recent {
  #samples: Kept[] = [];
  #from = 0;

  add({ atMs, headingDeg, halfWidthDeg, speedMPerS, gustMPerS, flags, word }: Sample): void {
    const last = this.#samples.at(-1);
    // What comes late, as from an old log, is no wind of now.
    if (last && atMs <= last.atMs) return;
    this.#samples.push({ atMs, headingDeg, halfWidthDeg, speedMPerS, gustMPerS, flags, word });
    while (this.#samples[this.#from]!.atMs <= atMs - TEN_MINUTES_MS) this.#from++;
    if (this.#samples.length - this.#from > KEPT_MOST) this.#from++;
    if (this.#from > 1000 && this.#from * 2 > this.#samples.length) {
      this.#samples = this.#samples.slice(this.#from);
      this.#from = 0;
    }
  }

  wind(station: string): LiveWind {
    const recent = this.#samples.slice(this.#from);
    const last = recent.at(-1)!;
    return {
      station,
      atMs: last.atMs,
      headingDeg: last.headingDeg,
      halfWidthDeg: last.halfWidthDeg,
      speedMPerS: last.speedMPerS,
      flags: last.flags,
      word: last.word,
      gust: gustOf(recent),
      twoMinutes: meanOf(recent.filter(({ atMs }) => atMs > last.atMs - TWO_MINUTES_MS)),
      tenMinutes: meanOf(recent),
    };
  }
}

function meanOf(samples: readonly Kept[]): LiveMean {
  const sum = new PeriodSum(REPORTED_CALM_M_PER_S);
  for (const { atMs, headingDeg, speedMPerS } of samples) sum.add(atMs, headingDeg, speedMPerS);
  const { heading, spreadDeg, speed, calms } = sum.summary();
  return {
    headingDeg: heading?.headingDeg ?? null,
    agreement: heading?.agreement ?? null,
    spreadDeg,
    speedMPerS: speed?.meanMPerS ?? null,
    samples: samples.length,
    calms,
  };
}

/** Highest 3 s mean: of samples that come often enough, else as the controller worked it out. */
function gustOf(samples: readonly Kept[]): Gust | null {
  const told = samples.reduce<Gust | null>(
    (best, { atMs, gustMPerS }) =>
      gustMPerS !== null && gustMPerS > (best?.speedMPerS ?? -1) ? { speedMPerS: gustMPerS, atMs } : best,
    null,
  );
  if (told) return told;
  const steps = samples.slice(1).map(({ atMs }, i) => atMs - samples[i]!.atMs);
  const intervalMs = steps.sort((a, b) => a - b)[steps.length >> 1] ?? Infinity;
  if (!(intervalMs <= GUST_WINDOW_MS)) return null;
  const sum = new GustSum({ intervalMs, windowMs: GUST_WINDOW_MS });
  for (const { atMs, speedMPerS } of samples) if (speedMPerS !== null) sum.add(atMs, speedMPerS);
  return sum.highest();
}

/** Where the wind of now can be asked for. */
export interface LiveWinds {
  /** Wind at a station, or `null` when nothing has come from it. */
  wind(station: string): LiveWind | null;
  stations(): string[];
  /** Hears of every station that changes; gives back what ends it. */
  listen(listener: (wind: LiveWind) => void): () => void;
}

/** Keeps the wind of now for every station; memory is bounded by ten minutes of samples each. */
export class LiveStations implements LiveWinds {
  readonly #stations = new Map<string, Recent>();
  readonly #listeners = new Set<(wind: LiveWind) => void>();

  /** Samples as they come. */
  take(samples: readonly Sample[]): void {
    const touched = new Set<string>();
    for (const sample of samples) {
      const recent = this.#stations.get(sample.station) ?? new Recent();
      this.#stations.set(sample.station, recent);
      recent.add(sample);
      touched.add(sample.station);
    }
    if (this.#listeners.size === 0) return;
    for (const station of touched) {
      const wind = this.wind(station)!;
      for (const listener of this.#listeners) listener(wind);
    }
  }

  wind(station: string): LiveWind | null {
    return this.#stations.get(station)?.wind(station) ?? null;
  }

  stations(): string[] {
    return [...this.#stations.keys()];
  }

  listen(listener: (wind: LiveWind) => void): () => void {
    this.#listeners.add(listener);
    return () => void this.#listeners.delete(listener);
  }
}
