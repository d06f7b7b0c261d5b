import { VanewrightError } from '../../core/error/index.ts';
import { faultColumnsOf } from '../../core/faults/index.ts';
import type { LedgerReason, Sample } from '../../core/record/index.ts';
import { columnsOfBytes } from '../../core/wind/index.ts';
import type { RecordReading, SampleWindow, StationSpan } from '../../ports/index.ts';

function silent(url: string, got: string): VanewrightError {
  return new VanewrightError({
    code: 'store/in-use',
    what: 'The logger that holds this store does not answer.',
    where: url,
    got,
    allowed: 'an answer of a running vanewright log',
    fix: 'Try again in a moment; if it stays, look at the terminal of the logger.',
  });
}

async function ask(url: string): Promise<Response> {
  const response = await fetch(url).catch((error: unknown) => {
    throw silent(url, error instanceof Error ? error.message : String(error));
  });
  if (!response.ok) throw silent(url, `${response.status}`);
  return response;
}

const stationPath = (url: string, { station }: SampleWindow, what: string): string =>
  `${url}/api/stations/${encodeURIComponent(station)}/${what}`;

function span({ fromMs, untilMs }: SampleWindow): string {
  return `sinceMs=${Math.ceil(fromMs)}&untilMs=${Math.ceil(untilMs)}`;
}

async function* samples(url: string, window: SampleWindow): AsyncIterable<readonly Sample[]> {
  for (let from: number | null = window.fromMs; from !== null;) {
    const response = await ask(`${stationPath(url, window, 'samples')}?${span({ ...window, fromMs: from })}`);
    const part = (await response.json()) as { samples: Sample[]; nextSinceMs: number | null };
    if (part.samples.length > 0) yield part.samples.map((sample) => ({ ...sample, station: window.station }));
    from = part.nextSinceMs;
  }
}

/**
 * A record read through the logger that holds its store.
 *
 * @param url - Where the logger listens on this machine.
 */
export function loggerRecord(url: string): RecordReading {
  return {
    stations: async () => (await (await ask(`${url}/api/stations`)).json()) as StationSpan[],
    ledgerCounts: async () =>
      (await (await ask(`${url}/api/ledger`)).json()) as { reason: LedgerReason; count: number }[],
    samples: (window) => samples(url, window),
    async *columns(window) {
      const { body } = await ask(`${stationPath(url, window, 'columns')}?${span(window)}`);
      if (body) yield* columnsOfBytes(body);
    },
    async *faultColumns(window) {
      for await (const part of samples(url, window)) yield faultColumnsOf(part);
    },
  };
}
