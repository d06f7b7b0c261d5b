import type { Alert } from '../ports/index.ts';
import type { LiveAlerts } from './faultAlerts.ts';
import type { LiveWind, LiveWinds } from './logLive.ts';

/** How the wind reaches the one who looks at it. */
export type Logging =
  /** A logger holds the store and tells every change at once. */
  | 'logger'
  /** Loggers anywhere write into a store that is looked at again and again. */
  | 'shared'
  /** Nobody logs: what is shown is what the store holds. */
  | 'nobody';

/** Winds that come from elsewhere, the last of each station kept. */
export class LiveRelay implements LiveWinds {
  readonly #winds = new Map<string, LiveWind>();
  readonly #listeners = new Set<(wind: LiveWind) => void>();
  /** How they come just now. */
  logging: Logging = 'nobody';

  /** A wind as it comes; one that is older than what is known is let go. */
  take(wind: LiveWind): void {
    if ((this.#winds.get(wind.station)?.atMs ?? -Infinity) > wind.atMs) return;
    this.#winds.set(wind.station, wind);
    for (const listener of this.#listeners) listener(wind);
  }

  wind(station: string): LiveWind | null {
    return this.#winds.get(station) ?? null;
  }

  stations(): string[] {
    return [...this.#winds.keys()];
  }

  listen(listener: (wind: LiveWind) => void): () => void {
    this.#listeners.add(listener);
    return () => void this.#listeners.delete(listener);
  }
}

/** Faults that come from elsewhere, those that are up kept. */
export class AlertRelay implements LiveAlerts {
  readonly #up = new Map<string, Alert>();
  readonly #listeners = new Set<(alert: Alert) => void>();

  /** A fault as it comes up or is over. */
  take(alert: Alert): void {
    const name = JSON.stringify([alert.station, alert.fault]);
    if (alert.state === 'raised') this.#up.set(name, alert);
    else this.#up.delete(name);
    for (const listener of this.#listeners) listener(alert);
  }

  current(): Alert[] {
    return [...this.#up.values()];
  }

  listen(listener: (alert: Alert) => void): () => void {
    this.#listeners.add(listener);
    return () => void this.#listeners.delete(listener);
  }

  /** Nobody watches any longer, so nothing is known to be up. */
  forget(): void {
    this.#up.clear();
  }
}
