import { FaultWatch, type FaultSetting, type Finding } from '../core/faults/index.ts';
import type { Sample } from '../core/record/index.ts';
import type { Alert, SampleStore } from '../ports/index.ts';

const HOUR_MS = 3_600_000;
/** Findings are looked at this often, in time of the samples. [ms] */
const LOOK_MS = 60_000;
/** A fault must have been over for this long before it is cleared; if it comes back sooner, nothing is said. [ms] */
const CLEAR_AFTER_MS = 6 * HOUR_MS;
/** Findings older than this, as when old logs are read, are no news. [ms] */
const NEWS_MS = 48 * HOUR_MS;
/** What was recorded before the start is read again this far back, so that habits are known at once. [ms] */
const LEARN_MS = 120 * 24 * HOUR_MS;

interface Raised {
  readonly finding: Finding;
  overMs: number | null;
}

/** One station that is watched. */
interface Station {
  readonly watch: FaultWatch;
  readonly raised: Map<string, Raised>;
  lookedMs: number;
}

/** The same for a fault that comes back, so that it is not told twice: only dirt has a place of its own. */
function nameOf({ kind, channels, positions }: Finding): string {
  const channel = channels.slice(0, 1).map((one) => `channel-${one}`);
  const position = kind === 'dirty-sector' ? positions.map((one) => `position-${one}`) : [];
  return [kind, ...channel, ...position].join('/');
}

/** Faults as they come up, for whoever shows them. */
export interface LiveAlerts {
  /** Faults that are up just now. */
  current(): Alert[];
  /** Hears of every fault that comes up or is over; gives back what ends it. */
  listen(listener: (alert: Alert) => void): () => void;
}

/** Watches every station and says once when a fault comes up and once when it is over. */
export class FaultAlerts implements LiveAlerts {
  readonly #setting: FaultSetting;
  readonly #nowMs: () => number;
  readonly #stations = new Map<string, Station>();
  readonly #listeners = new Set<(alert: Alert) => void>();

  /** @param nowMs - Clock that tells what is news. [ms UTC] */
  constructor(setting: FaultSetting, nowMs: () => number) {
    this.#setting = setting;
    this.#nowMs = nowMs;
  }

  /** Reads again what a store has of the last months, so that habits are known at once. */
  async learn(store: SampleStore): Promise<void> {
    const stations = await store.stations();
    for (const { station } of stations) this.#station(station);
    for (const { station, lastMs } of stations) {
      const window = { station, fromMs: lastMs - LEARN_MS, untilMs: lastMs + 1 };
      for await (const samples of store.samples(window)) {
        for (const sample of samples) this.#add(sample);
      }
    }
  }

  #station(name: string): Station {
    let station = this.#stations.get(name);
    if (!station) {
      station = { watch: new FaultWatch(this.#setting), raised: new Map(), lookedMs: -Infinity };
      this.#stations.set(name, station);
    }
    return station;
  }

  /** One sample; where there are just two stations, each is also watched against the other. */
  #add(sample: Sample): void {
    this.#station(sample.station).watch.add(sample);
    if (this.#stations.size !== 2) return;
    for (const [name, { watch }] of this.#stations)
      if (name !== sample.station) watch.addNeighbour(sample.station, sample.atMs, sample.headingDeg);
  }

  /** Samples as they come. */
  take(samples: readonly Sample[]): void {
    for (const sample of samples) {
      const station = this.#station(sample.station);
      this.#add(sample);
      if (sample.atMs - station.lookedMs < LOOK_MS) continue;
      station.lookedMs = sample.atMs;
      if (sample.atMs > this.#nowMs() - NEWS_MS) this.#look(sample.station, station, sample.atMs);
    }
  }

  #look(name: string, { watch, raised }: Station, atMs: number): void {
    const news = watch
      .findings()
      .filter(({ untilMs }) => untilMs === null || untilMs > atMs - CLEAR_AFTER_MS);
    const open = new Map(news.map((finding) => [nameOf(finding), finding]));
    for (const [fault, finding] of open) {
      const known = raised.get(fault);
      raised.set(fault, { finding, overMs: finding.untilMs });
      if (!known) this.#say({ state: 'raised', station: name, fault, atMs, finding });
    }
    for (const [fault, { finding, overMs }] of raised) {
      if (open.has(fault)) continue;
      raised.delete(fault);
      this.#say({
        state: 'cleared',
        station: name,
        fault,
        atMs,
        finding: { ...finding, untilMs: overMs ?? atMs },
      });
    }
  }

  #say(alert: Alert): void {
    for (const listener of this.#listeners) listener(alert);
  }

  /** Faults that are up just now. */
  current(): Alert[] {
    return [...this.#stations].flatMap(([station, { raised, lookedMs }]) =>
      [...raised].map(([fault, { finding }]) => ({
        state: 'raised' as const,
        station,
        fault,
        atMs: lookedMs,
        finding,
      })),
    );
  }

  /** Hears of every fault that comes up or is over; gives back what ends it. */
  listen(listener: (alert: Alert) => void): () => void {
    this.#listeners.add(listener);
    return () => void this.#listeners.delete(listener);
  }
}
