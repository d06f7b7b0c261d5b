import { spawnSync } from 'node:child_process';
import { mkdtemp, readdir, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { asyncBufferFromFile, parquetReadObjects } from 'hyparquet';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { duckdbArchive, duckdbSampleStore } from '../adapters/duckdb/index.ts';
import { memorySampleStore } from '../adapters/memory/index.ts';
import { batchOf, sampleAt } from '../../test/contracts/sampleStore.ts';
import type { Sample } from '../core/record/index.ts';
import type { SampleStore } from '../ports/index.ts';
import { archiveRecord } from './archiveRecord.ts';

let folder: string;
beforeEach(async () => {
  folder = await mkdtemp(join(tmpdir(), 'vanewright-archive-'));
});
afterEach(() => rm(folder, { recursive: true, force: true }));

const start = Date.parse('2026-05-31T00:00:00Z');
/** Two days across the end of a month, one sample a minute. */
const samples: readonly Sample[] = Array.from({ length: 2880 }, (_, i) =>
  sampleAt(start + 60_000 * i, {
    headingDeg: i % 50 === 0 ? null : (i * 11.25) % 360,
    speedMPerS: i % 70 === 0 ? null : (i % 97) / 10,
    word: (i % 32).toString(2).padStart(5, '0'),
    pulses: i,
  }),
);
const sum = (values: readonly unknown[]): number =>
  values.reduce<number>((all, value) => all + ((value as number | null) ?? 0), 0);
const whole = { sinceMs: null, untilMs: null } as const;

async function filled(store: SampleStore): Promise<SampleStore> {
  await store.commit(
    batchOf(1, samples, {
      ledger: [{ stream: 1, reason: 'rubbish', fromLine: 1, toLine: 1, count: 1, got: '=1+1' }],
    }),
  );
  return store;
}

describe.each([
  ['an embedded store', () => duckdbSampleStore(':memory:')],
  ['any other store', async () => memorySampleStore()],
])('an archive of %s', (_, open) => {
  it('is read as Parquet by another program, with equal rows and sums', async () => {
    const store = await filled(await open());
    const { files, rows } = await archiveRecord(store, duckdbArchive(folder), {
      format: 'parquet',
      ...whole,
    });
    expect(files.map(({ path, rows: n }) => [path, n])).toEqual([
      ['samples/station=jetty/month=2026-05/samples.parquet', 1440],
      ['samples/station=jetty/month=2026-06/samples.parquet', 1440],
    ]);
    const read = [];
    for (const { path } of files) {
      read.push(...(await parquetReadObjects({ file: await asyncBufferFromFile(join(folder, path)) })));
    }
    expect(read).toHaveLength(rows);
    expect(sum(read.map((row) => row.wind_speed_m_s))).toBeCloseTo(sum(samples.map((s) => s.speedMPerS)), 6);
    expect(sum(read.map((row) => row.wind_from_direction_deg))).toBeCloseTo(
      sum(samples.map((s) => s.headingDeg)),
      6,
    );
    expect(read.filter((row) => row.wind_from_direction_deg === null)).toHaveLength(58);
    expect((read[1440]!.time as Date).toISOString()).toBe('2026-06-01T00:00:00.000Z');
    expect(read[33]!.word).toBe('00001');
    await store.close();
  });
});

describe('an archive', () => {
  it('is read as CSV by another program, and makes no formula of a line that was sent', async () => {
    const store = await filled(memorySampleStore());
    await archiveRecord(store, duckdbArchive(folder), { format: 'csv', ...whole });
    const script = `
import csv, glob, sys
rows = [r for p in sorted(glob.glob(sys.argv[1] + '/samples/*/*/*.csv')) for r in csv.DictReader(open(p, newline=''))]
print(len(rows), round(sum(float(r['wind_speed_m_s'] or 0) for r in rows), 6))
print(next(csv.DictReader(open(sys.argv[1] + '/ledger.csv', newline='')))['got'])`;
    const said = spawnSync('python3', ['-c', script, folder], { encoding: 'utf8' }).stdout.split('\n');
    expect(said[0]!.split(' ').map(Number)).toEqual([
      2880,
      Number(sum(samples.map((s) => s.speedMPerS)).toFixed(6)),
    ]);
    expect(said[1]).toBe("'=1+1");
    const described = JSON.parse(await readFile(join(folder, 'datapackage.json'), 'utf8')) as {
      resources: { path: string }[];
    };
    expect(described.resources).toHaveLength(2);
  });

  it('may be of a time alone', async () => {
    const store = await filled(memorySampleStore());
    const request = {
      format: 'csv',
      sinceMs: start + 86_400_000,
      untilMs: start + 86_400_000 + 600_000,
    } as const;
    const { files, rows } = await archiveRecord(store, duckdbArchive(folder), request);
    expect([files.length, rows]).toEqual([1, 10]);
    const later = archiveRecord(store, duckdbArchive(folder), {
      ...request,
      sinceMs: start + 1e10,
      untilMs: null,
    });
    await expect(later).rejects.toThrow('log/nothing-to-archive');
  });

  it('stays in its folder, whatever a station is called, and leaves no half file', async () => {
    const store = memorySampleStore();
    await store.commit(
      batchOf(
        1,
        ['../../up', 'a/b', '..', `'; DROP`].map((station) => sampleAt(1, { station })),
      ),
    );
    await archiveRecord(store, duckdbArchive(join(folder, 'in')), { format: 'parquet', ...whole });
    expect(await readdir(folder)).toEqual(['in']);
    const inside = await readdir(join(folder, 'in'), { recursive: true });
    expect(inside.filter((path) => path.endsWith('.parquet'))).toHaveLength(4);
    expect(inside.filter((path) => path.endsWith('.part'))).toEqual([]);
    await writeFile(join(folder, 'file'), 'x');
    const blocked = archiveRecord(store, duckdbArchive(join(folder, 'file')), { format: 'csv', ...whole });
    await expect(blocked).rejects.toThrow('store/archive-not-written');
  });
});
