import { LiveStations, type AlertRelay, type LiveRelay, type LiveWind } from '../../app/api.ts';
import type { Alert, RecordReading } from '../../ports/index.ts';

/** Hears an event by its name. */
type Hear = (event: string, data: unknown) => void;

/** Where changes can be heard of. */
export interface Followed {
  readonly store: RecordReading;
  readonly relay: LiveRelay;
  readonly alerts: AlertRelay;
  /** Hears a running logger until it ends; `null` where there is none. */
  logger(): Promise<((hear: Hear, stop: AbortSignal) => Promise<void>) | null>;
  /** Whether loggers elsewhere may write into the store at any time. */
  readonly isShared: boolean;
}

/** How often a store is looked at. [ms] */
const LOOK_EVERY_MS = 2000;
/** How much of the end of a record the wind of now is made of. [ms] */
const RECENT_MS = 600_000;
/** New stations are looked for each so many looks, since counting a whole record takes long. [-] */
const COUNT_EVERY = 30;

/** Brings the end of each station's record into the wind of now. */
class Ends {
  readonly #store: RecordReading;
  readonly #live = new LiveStations();
  readonly #lastMs = new Map<string, number>();
  #looks = 0;

  constructor(store: RecordReading, relay: LiveRelay) {
    this.#store = store;
    this.#live.listen((wind) => relay.take(wind));
  }

  async look(): Promise<void> {
    if (this.#looks++ % COUNT_EVERY === 0) {
      for (const { station, lastMs } of await this.#store.stations())
        if (!this.#lastMs.has(station)) this.#lastMs.set(station, lastMs - RECENT_MS);
    }
    for (const [station, lastMs] of this.#lastMs) {
      for await (const samples of this.#store.samples({ station, fromMs: lastMs + 1, untilMs: 8.64e15 })) {
        this.#live.take(samples);
        this.#lastMs.set(station, samples.at(-1)!.atMs);
      }
    }
  }

  /** The next look counts again: what is in the store may be another by then. */
  countAgain(): void {
    this.#looks = 0;
  }
}

/** A wait that ends early when it is no longer wanted. */
function pause(ms: number, stop: AbortSignal): Promise<void> {
  return new Promise((done) => {
    const timer = setTimeout(done, ms);
    stop.addEventListener('abort', () => (clearTimeout(timer), done()), { once: true });
  });
}

/** Keeps the wind of now up to date until it is stopped, whoever logs and whether anyone does. */
export async function follow(
  { store, relay, alerts, logger, isShared }: Followed,
  say: (text: string) => void,
  stop: AbortSignal,
): Promise<void> {
  const ends = new Ends(store, relay);
  let isSeeded = false;
  let said = '';
  while (!stop.aborted) {
    try {
      if (!isSeeded || isShared) await ends.look();
      isSeeded = true;
      said = '';
      const hearing = await logger();
      relay.logging = hearing ? 'logger' : isShared ? 'shared' : 'nobody';
      if (hearing) {
        await hearing((event, data) => {
          if (event === 'wind') relay.take(data as LiveWind);
          if (event === 'fault') alerts.take(data as Alert);
        }, stop);
        ends.countAgain();
      }
    } catch (error) {
      const text = error instanceof Error ? error.message : String(error);
      if (text !== said && !stop.aborted) say(text);
      said = text;
    }
    if (relay.logging === 'logger') relay.logging = 'nobody';
    alerts.forget();
    await pause(LOOK_EVERY_MS, stop);
  }
}
