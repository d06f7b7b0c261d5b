import { spawn } from 'node:child_process';
import { appendFile, mkdtemp, readdir, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { duckdbSampleStore } from '../adapters/duckdb/index.ts';
import { machineClock } from '../adapters/logFiles/index.ts';
import { memorySampleStore } from '../adapters/memory/index.ts';
import { fileRawLog } from '../adapters/rawLogFiles/index.ts';
import { allSamples } from '../../test/contracts/sampleStore.ts';
import { damagedVaneLog } from '../../test/support/damagedLog.ts';
import { ROOT } from '../../test/support/sourceFiles.ts';
import { PLAIN_RULE, type Sample } from '../core/record/index.ts';
import type { RawLog, SampleStore, SourceBytes } from '../ports/index.ts';
import { Recorder, type RecorderParts } from './logRecorder.ts';

let folder: string;
beforeEach(async () => {
  folder = await mkdtemp(join(tmpdir(), 'vanewright-recorder-'));
});
afterEach(() => rm(folder, { recursive: true, force: true }));

const begin = { station: 'jetty', source: 'serial', name: 'port' } as const;
const rule = { ...PLAIN_RULE, cups: { runPerPulseM: 0.5, startSpeedMPerS: 0.2 } };
const piece = (bytes: Uint8Array | string, arrivedMs: number | null, isEnd = false): SourceBytes => ({
  begin,
  bytes: Uint8Array.from(Buffer.from(bytes as string)),
  arrivedMs,
  isEnd,
  done: null,
});
const rawLog = (): Promise<RawLog> => fileRawLog(join(folder, 'raw'));
const recorder = (log: RawLog, store: SampleStore, more: Partial<RecorderParts> = {}): Recorder =>
  new Recorder({ log, store, clock: machineClock, rule, choices: {}, ...more });

/** Everything a store holds, for comparison. */
async function contents(store: SampleStore): Promise<{ samples: Sample[]; ledger: unknown[] }> {
  const ledger: unknown[] = [];
  for await (const rows of store.ledger()) ledger.push(...rows);
  return { samples: await allSamples(store), ledger };
}

async function recordLive(log: RawLog, store: SampleStore, seed: number): Promise<void> {
  const live = recorder(log, store);
  await live.start();
  for (const { bytes, arrivedMs } of damagedVaneLog(seed, 1500, 0.05).pieces) {
    // Bytes come as a port cuts them, which is not at the ends of lines.
    const cut = Math.floor(bytes.length / 3);
    await live.take(piece(bytes.subarray(0, cut), arrivedMs));
    await live.take(piece(bytes.subarray(cut), arrivedMs));
  }
  await live.close();
}

describe('a recorder', () => {
  it('builds the same store again from the raw log, whatever was damaged', async () => {
    const log = await rawLog();
    const store = await duckdbSampleStore(join(folder, 'record.duckdb'));
    await recordLive(log, store, 1);
    const live = await contents(store);
    expect(live.samples.length).toBeGreaterThan(1300);
    await recorder(log, store).rebuild();
    expect(await contents(store)).toEqual(live);
    const other = memorySampleStore();
    await recorder(log, other).rebuild();
    expect(await contents(other)).toEqual(live);
    await store.close();
    await log.close();
  });

  it('goes on where it stopped, with the pulses and the clock of the line before', async () => {
    const { pieces } = damagedVaneLog(2, 800, 0.05);
    const [whole, parts] = [memorySampleStore(), memorySampleStore()];
    const log = await rawLog();
    const once = recorder(log, whole);
    await once.start();
    for (const { bytes, arrivedMs } of pieces) await once.take(piece(bytes, arrivedMs));
    await once.close();
    // The same raw log, read in three goes: each goes on from the state that was stored.
    const cutOff: RawLog = {
      ...log,
      name: log.name,
      damage: [],
      lastSeq: log.lastSeq,
      append: () => Promise.reject(new Error('no')),
      read: (after) => until(log, after, 300),
      close: async () => {},
    };
    await recorder({ ...cutOff, read: (after) => until(log, after, 300) }, parts)
      .start()
      .catch(() => {});
    await recorder({ ...cutOff, read: (after) => until(log, after, 500) }, parts)
      .start()
      .catch(() => {});
    await recorder({ ...cutOff, read: (after) => until(log, after, 1e9) }, parts)
      .start()
      .catch(() => {});
    expect((await contents(parts)).samples).toEqual((await contents(whole)).samples);
    await log.close();
  });

  it('reads the same bytes differently when other choices are made', async () => {
    const log = await rawLog();
    const store = memorySampleStore();
    const first = recorder(log, store);
    await first.start();
    const text = 'time,dir,speed\n2026-05-01 00:00,10,36\n2026-05-01 00:10,20,18\n';
    await first.take(piece(text, null, true));
    await first.close();
    expect((await allSamples(store)).map(({ speedMPerS }) => speedMPerS)).toEqual([36, 18]);
    const other = recorder(log, store, { choices: { speedUnit: 'km/h', zone: '+02:00' } });
    await other.rebuild();
    const samples = await allSamples(store);
    expect(samples.map(({ speedMPerS }) => speedMPerS)).toEqual([10, 5]);
    expect(new Date(samples[0]!.atMs).toISOString()).toBe('2026-04-30T22:00:00.000Z');
    await log.close();
  });

  it('places runs without a clock by remembered moments', async () => {
    const log = await rawLog();
    const store = memorySampleStore();
    const first = recorder(log, store);
    await first.start();
    const text = 'ms,dir,speed_ms\n1000,10,3\n2000,20,3\nVane ready\n1000,30,3\n2000,40,3\n';
    await first.take(piece(text, null, true));
    await first.close();
    expect(await allSamples(store)).toEqual([]);
    const atMs = Date.parse('2026-03-01T10:00:00Z');
    const moments = [
      { stream: 1, segment: 0, counterMs: 1000, atMs, withinMs: 60_000 },
      { stream: 1, segment: 1, counterMs: 1000, atMs: atMs + 3_600_000, withinMs: 60_000 },
    ];
    await recorder(log, store, { choices: { moments } }).rebuild();
    expect((await allSamples(store)).map((s) => [s.atMs - atMs, s.headingDeg, s.withinMs])).toEqual([
      [0, 10, 60_000],
      [1000, 20, 60_005],
      [3_600_000, 30, 60_000],
      [3_601_000, 40, 60_005],
    ]);
    await log.close();
  });

  it('keeps everything in the raw log while its store is lost, and catches up', async () => {
    const log = await rawLog();
    const inner = memorySampleStore();
    let isLost = true;
    const said: unknown[] = [];
    const store: SampleStore = {
      ...inner,
      commit: (batch) => (isLost ? Promise.reject(new Error('the server is gone')) : inner.commit(batch)),
    };
    const live = recorder(log, store, { onStoreLost: (error) => said.push(error) });
    await live.start();
    const { pieces, good } = damagedVaneLog(3, 300, 0);
    for (const [i, { bytes, arrivedMs }] of pieces.entries()) {
      await live.take(piece(bytes, arrivedMs));
      if (i === 100) await live.flush();
    }
    await live.flush();
    isLost = false;
    await live.flush();
    expect(await allSamples(inner)).toHaveLength(good.length);
    expect(said.length).toBeGreaterThanOrEqual(1);
    await live.close();
    await log.close();
  });

  it('ends what a crash left open, and starts again by itself after any damage', async () => {
    const log = await rawLog();
    await recordLive(log, memorySampleStore(), 4);
    await log.close();
    const names = (await readdir(join(folder, 'raw'))).filter((name) => name.endsWith('.raw')).sort();
    await appendFile(join(folder, 'raw', names.at(-1)!), Buffer.alloc(300));
    const again = await rawLog();
    const store = memorySampleStore();
    await recordLive(again, store, 5);
    const counts = Object.fromEntries(
      (await store.ledgerCounts()).map(({ reason, count }) => [reason, count]),
    );
    expect(counts['raw-damaged']).toBe(300);
    expect(counts.conflict ?? 0).toBeGreaterThan(0);
    await again.close();
  });
});

/** The entries of a log up to one. */
async function* until(log: RawLog, after: number, last: number) {
  for await (const entries of log.read(after)) yield entries.filter(({ seq }) => seq <= last);
}

describe('a logger with its store, killed', () => {
  const KILLS = 12;

  function killed(run: number): Promise<string[]> {
    const dist = (path: string): string => JSON.stringify(join(ROOT, 'dist', path));
    const script = `
      import { duckdbSampleStore } from ${dist('adapters/duckdb/index.js')};
      import { fileRawLog } from ${dist('adapters/rawLogFiles/index.js')};
      import { machineClock } from ${dist('adapters/logFiles/index.js')};
      import { Recorder } from ${dist('app/logRecorder.js')};
      import { PLAIN_RULE } from ${dist('core/record/index.js')};
      import { writeSync } from 'node:fs';
      const [folder, run] = process.argv.slice(1);
      const log = await fileRawLog(folder + '/raw');
      const store = await duckdbSampleStore(folder + '/record.duckdb');
      const recorder = new Recorder({ log, store, clock: machineClock, rule: PLAIN_RULE, choices: {} });
      await recorder.start();
      const begin = { station: 'jetty', source: 'file', name: 'run ' + run };
      const take = (text) => recorder.take({ begin, bytes: Buffer.from(text), arrivedMs: null, isEnd: false, done: null });
      await take('time,dir,speed_ms\\n');
      for (let i = 0; ; i++) {
        const atMs = 1700000000000 + run * 100000000 + i * 1000;
        await take(new Date(atMs).toISOString() + ',10,3\\n');
        writeSync(1, atMs + '\\n');
        if (i % 40 === 39) void recorder.flush();
      }`;
    return new Promise((done) => {
      const child = spawn(process.execPath, ['--input-type=module', '-e', script, folder, String(run)]);
      let said = '';
      child.stdout.setEncoding('utf8').on('data', (text: string) => {
        if (said === '') setTimeout(() => child.kill('SIGKILL'), (run * 37) % 190);
        said += text;
      });
      child.on('close', () => done(said.split('\n').slice(0, -1)));
    });
  }

  it('has every acknowledged sample in the store once it has started again', async () => {
    const acknowledged: number[] = [];
    for (let run = 0; run < KILLS; run++) acknowledged.push(...(await killed(run)).map(Number));
    const log = await rawLog();
    const store = await duckdbSampleStore(join(folder, 'record.duckdb'));
    await recorder(log, store, { rule: PLAIN_RULE }).start();
    const stored = new Set((await allSamples(store)).map(({ atMs }) => atMs));
    expect(acknowledged.filter((atMs) => !stored.has(atMs))).toEqual([]);
    expect(acknowledged.length).toBeGreaterThan(KILLS);
    const live = await contents(store);
    await recorder(log, store, { rule: PLAIN_RULE }).rebuild();
    expect((await contents(store)).samples).toEqual(live.samples);
    await store.close();
    await log.close();
  }, 120_000);
});
