import { mkdtemp, readdir, readFile, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { asyncBufferFromFile, parquetReadObjects } from 'hyparquet';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { duckdbArchive, duckdbSampleStore } from '../adapters/duckdb/index.ts';
import { allSamples, batchOf, sampleAt } from '../../test/contracts/sampleStore.ts';
import type { ArchiveFolder, SampleStore } from '../ports/index.ts';
import { thinRecord } from './thinRecord.ts';

let folder: string;
let store: SampleStore;
beforeEach(async () => {
  folder = await mkdtemp(join(tmpdir(), 'vanewright-thin-'));
  store = await duckdbSampleStore(':memory:');
});
afterEach(async () => {
  await store.close();
  await rm(folder, { recursive: true, force: true });
});

const MINUTE = 60_000;
const first = Date.parse('2026-04-29T00:01:00Z');
const june = Date.parse('2026-06-01T00:00:00Z');
/** One sample a minute, up to the second day of June. */
const samples = Array.from({ length: (june - first) / MINUTE + 1440 }, (_, i) =>
  sampleAt(first + MINUTE * i, {
    headingDeg: i % 50 === 0 ? null : 90,
    // Ten minutes from :01 to :10 have the same wind, in whole metres a second.
    speedMPerS: 1 + (Math.floor(i / 10) % 20),
    line: i,
  }),
);
const nowMs = Date.parse('2026-07-10T12:00:00Z');
const keep = { keepDays: 30, nowMs };

const counts = async (): Promise<Record<string, number>> =>
  Object.fromEntries((await store.ledgerCounts()).map(({ reason, count }) => [reason, count]));

describe('thinning a record out', () => {
  it('moves whole months, leaves the rest, and keeps means that anyone can check', async () => {
    await store.commit(batchOf(1, samples));
    const { rows, files, means } = await thinRecord(store, duckdbArchive(folder), keep);
    const old = samples.filter(({ atMs }) => atMs <= june);
    expect(rows).toBe(old.length);
    expect((await allSamples(store)).map(({ atMs }) => atMs)).toEqual(
      samples.filter(({ atMs }) => atMs > june).map(({ atMs }) => atMs),
    );
    expect(await counts()).toEqual({ 'moved-out': old.length });
    expect(files.map(({ month }) => month)).toEqual(['2026-04', '2026-05', '2026-06']);
    let [read, speed] = [0, 0];
    for (const { path } of files) {
      const found = await parquetReadObjects({ file: await asyncBufferFromFile(join(folder, path)) });
      read += found.length;
      speed += found.reduce((sum, row) => sum + (row.wind_speed_m_s as number), 0);
    }
    expect(read).toBe(old.length);
    expect(speed).toBe(old.reduce((sum, { speedMPerS }) => sum + speedMPerS!, 0));
    const [heading, ...table] = (await readFile(join(folder, means[0]!), 'utf8')).trim().split('\r\n');
    expect(heading!.split(',').slice(0, 2)).toEqual(['end_time', 'wind_from_direction_deg']);
    expect(table).toHaveLength(old.length / 10);
    for (const [i, line] of table.entries()) {
      const [end, direction, , , mean] = line.split(',');
      expect(Date.parse(end!)).toBe(first + MINUTE * (10 * i + 9));
      expect([Number(direction), Number(mean)]).toEqual([90, 1 + (i % 20)]);
    }
  });

  it('does nothing the second time, and never replaces what was moved before', async () => {
    await store.commit(batchOf(1, samples));
    const before = await thinRecord(store, duckdbArchive(folder), keep);
    const again = await thinRecord(store, duckdbArchive(folder), keep);
    expect([again.rows, again.files]).toEqual([0, []]);
    // An old log of the same month is found later.
    await store.commit(batchOf(2, [sampleAt(first + 30_000), sampleAt(first + 90_000)]));
    const late = await thinRecord(store, duckdbArchive(folder), keep);
    expect(late.rows).toBe(2);
    const there = (await readdir(folder, { recursive: true })).filter((name) => name.endsWith('.parquet'));
    expect(there).toHaveLength(before.files.length + 1);
  });

  it('takes nothing out when the archive reads back as something else', async () => {
    await store.commit(batchOf(1, samples));
    const sound = duckdbArchive(folder);
    const spoiled: ArchiveFolder = {
      ...sound,
      figures: async (path) => ({ ...(await sound.figures(path)), speedSum: 1 }),
    };
    await expect(thinRecord(store, spoiled, keep)).rejects.toThrow('log/archive-differs');
    expect(await allSamples(store)).toHaveLength(samples.length);
    expect(await counts()).toEqual({});
  });
});
