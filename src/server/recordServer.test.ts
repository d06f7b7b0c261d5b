import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { get } from 'node:http';
import { memorySampleStore } from '../adapters/memory/index.ts';
import { batchOf, sampleAt } from '../../test/contracts/sampleStore.ts';
import { LiveStations } from '../app/api.ts';
import type { SampleStore } from '../ports/index.ts';
import { recordServer, type Listening } from './recordServer.ts';

const start = Date.parse('2026-05-01T00:00:00Z');
let store: SampleStore;
let live: LiveStations;
let server: Listening;
beforeEach(async () => {
  store = memorySampleStore();
  live = new LiveStations();
  server = await recordServer({ store, live }, 0);
});
afterEach(() => server.close());

const ask = async (path: string): Promise<{ status: number; body: Record<string, unknown> }> => {
  const response = await fetch(`${server.url}${path}`);
  return { status: response.status, body: (await response.json()) as Record<string, unknown> };
};

describe('the record served on this machine', () => {
  it('tells stations, samples and ledger', async () => {
    const samples = Array.from({ length: 12_000 }, (_, i) => sampleAt(start + 1000 * i));
    await store.commit(
      batchOf(1, samples, {
        ledger: [{ stream: 1, reason: 'rubbish', fromLine: 1, toLine: 1, count: 4, got: 'x' }],
      }),
    );
    expect((await ask('/api/stations')).body).toMatchObject([{ station: 'jetty', samples: 12_000 }]);
    expect((await ask('/api/ledger')).body).toEqual([{ reason: 'rubbish', count: 4 }]);
    const first = (await ask('/api/stations/jetty/samples')).body as {
      samples: { atMs: number }[];
      nextSinceMs: number;
    };
    expect(first.samples).toHaveLength(10_000);
    const rest = (await ask(`/api/stations/jetty/samples?sinceMs=${first.nextSinceMs}`)).body as typeof first;
    expect(rest.samples).toHaveLength(2000);
    expect(rest.samples[0]!.atMs).toBe(start + 10_000_000);
    expect(rest.nextSinceMs).toBeNull();
  });

  it('tells the wind of now, and nothing of a station that is none', async () => {
    live.take([sampleAt(start, { headingDeg: 0, speedMPerS: null })]);
    const { body } = await ask('/api/stations/jetty/wind');
    expect(body).toMatchObject({
      headingDeg: 0,
      speedMPerS: null,
      tenMinutes: { samples: 1, speedMPerS: null },
    });
    const gone = await ask(`/api/stations/${encodeURIComponent(`'; DROP TABLE <b>`)}/wind`);
    expect(gone.status).toBe(404);
    expect(JSON.stringify(gone.body)).toContain('log/no-such-station');
    expect((await ask('/api/stations/jetty/samples?sinceMs=now')).status).toBe(400);
  });

  it('sends every change as it comes', async () => {
    live.take([sampleAt(start)]);
    const response = await fetch(`${server.url}/api/events`);
    const reader = response.body!.getReader();
    let said = '';
    const until = async (part: string): Promise<void> => {
      while (!said.includes(part)) said += Buffer.from((await reader.read()).value!).toString();
    };
    await until(': listening');
    live.take([sampleAt(start + 1000, { headingDeg: 123.75 })]);
    await until('"headingDeg":123.75');
    expect(said).toContain('event: wind');
    await reader.cancel();
  });

  it('describes itself as OpenAPI', async () => {
    const { body } = await ask('/openapi.json');
    expect(body.openapi).toMatch(/^3\./);
    expect(Object.keys(body.paths as object).sort()).toEqual([
      '/api/events',
      '/api/ledger',
      '/api/stations',
      '/api/stations/{station}/columns',
      '/api/stations/{station}/samples',
      '/api/stations/{station}/wind',
    ]);
  });

  it('answers no other site, also under a name that points here', async () => {
    const status = await new Promise((done) =>
      get(`${server.url}/api/stations`, { headers: { host: 'evil.example' } }, ({ statusCode }) =>
        done(statusCode),
      ),
    );
    expect(status).toBe(421);
  });
});
