import { useEffect, useState } from 'preact/hooks';
import { serverEvents } from '../server/serverEvents.ts';
import type { LiveWind } from './recordData.ts';

/** Wind of every station as it comes; `hear` is told each one too. */
export function useLive(isWanted: boolean, hear: (wind: LiveWind) => void): ReadonlyMap<string, LiveWind> {
  const [winds, setWinds] = useState<ReadonlyMap<string, LiveWind>>(new Map());
  useEffect(() => {
    if (!isWanted) return;
    return serverEvents('events', (event, data) => {
      if (event !== 'wind') return;
      const wind = data as LiveWind;
      setWinds((known) => new Map(known).set(wind.station, wind));
      hear(wind);
    });
  }, [isWanted]);
  return winds;
}

/** Asks again and again, and at once when `key` changes; the last answer stays while the server is silent. */
export function useAsked<T>(ask: (() => Promise<T>) | null, everyMs: number, key: string): T | null {
  const [answer, setAnswer] = useState<T | null>(null);
  useEffect(() => {
    if (ask === null) return;
    let isWanted = true;
    let timer: ReturnType<typeof setTimeout>;
    const again = (): void => {
      ask()
        .then(
          (value) => isWanted && setAnswer(() => value),
          () => {},
        )
        .finally(() => {
          if (isWanted) timer = setTimeout(again, everyMs);
        });
    };
    again();
    return () => {
      isWanted = false;
      clearTimeout(timer);
    };
  }, [key, ask === null]);
  return answer;
}

/** The time by this machine's clock, once a second. [ms UTC] */
export function useNow(): number {
  const [now, setNow] = useState(() => Date.now());
  useEffect(() => {
    const timer = setInterval(() => setNow(Date.now()), 1000);
    return () => clearInterval(timer);
  }, []);
  return now;
}
