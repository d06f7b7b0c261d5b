import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { eachSample } from '../../src/core/faults/index.ts';
import { sampleFlags, sampleWith, type LedgerRow, type Sample } from '../../src/core/record/index.ts';
import type { SampleStore, StoreBatch } from '../../src/ports/index.ts';

/** What a contract needs to know of the world behind an adapter. */
export interface StoreWorld {
  /** Opens the store; again, with what it held before, when it was closed. */
  open(): Promise<SampleStore>;
  end(): Promise<void>;
  /** Whether what is stored outlives closing. */
  readonly lasts: boolean;
}

export const sampleAt = (atMs: number, more: Partial<Sample> = {}): Sample =>
  sampleWith({
    station: 'jetty',
    atMs,
    withinMs: 150,
    headingDeg: 202.5,
    speedMPerS: 3.25,
    stream: 1,
    line: atMs,
    ...more,
  });

const row: LedgerRow = { stream: 1, reason: 'cut-line', fromLine: 3, toLine: 4, count: 2, got: 'vw1 7' };

/** One batch of a raw log. */
export const batchOf = (
  seq: number,
  samples: readonly Sample[],
  more: Partial<StoreBatch> = {},
): StoreBatch => ({
  samples,
  ledger: [],
  progress: { log: 'jetty-log', seq, state: `{"seq":${seq}}` },
  ...more,
});

/** Every sample of a station. */
export async function allSamples(
  store: SampleStore,
  station = 'jetty',
  fromMs = 0,
  untilMs = 4e12,
): Promise<Sample[]> {
  const all: Sample[] = [];
  for await (const samples of store.samples({ station, fromMs, untilMs })) all.push(...samples);
  return all;
}

async function ledgerOf(store: SampleStore) {
  const all = [];
  for await (const rows of store.ledger()) all.push(...rows);
  return all;
}

/** The sample store's promises; every adapter's own test runs them. */
export function sampleStoreContract(name: string, world: () => Promise<StoreWorld>): void {
  describe(`${name} keeps the sample store's promises`, () => {
    let here: StoreWorld;
    let store: SampleStore;
    beforeEach(async () => {
      here = await world();
      store = await here.open();
    });
    afterEach(async () => {
      await store.close();
      await here.end();
    });
    const times = async (...window: readonly number[]): Promise<number[]> =>
      (await allSamples(store, 'jetty', ...window)).map(({ atMs }) => atMs);

    it('hands the fault detectors what it hands out sample by sample', async () => {
      const parts: Partial<Sample>[] = [
        { word: '0110', counts: [812, 64, 3, 900], pulses: 17, edges: 34 },
        { headingDeg: null, speedMPerS: null },
        { word: '0111', flags: sampleFlags.impossibleJump, line: 77 },
        { station: 'pier' },
      ];
      await store.commit(
        batchOf(
          1,
          parts.map((more, i) => sampleAt(1000 * (i + 1), more)),
        ),
      );
      const samples = await allSamples(store, 'jetty', 1000, 3001);
      const seen: object[] = [];
      for await (const columns of store.faultColumns({ station: 'jetty', fromMs: 1000, untilMs: 3001 })) {
        eachSample(columns, (sample) => seen.push({ ...sample }));
      }
      expect(seen).toHaveLength(3);
      samples.forEach((sample, i) => expect(sample).toMatchObject(seen[i]!));
    });

    it('gives back every field as it was, and nothing for nothing', async () => {
      const full = sampleAt(1_795_608_000_123, {
        halfWidthDeg: 5.625,
        meanHeadingDeg: 201.37,
        agreement: 0.974,
        gustMPerS: 7.1234567890123,
        flags: sampleFlags.impossibleJump | sampleFlags.absurdSpeed,
        word: '00101',
        counts: [512, 0, 65_535, 3, 1023],
        pulses: 4_294_967_295,
        edges: 0,
        line: 4_000_000_000,
      });
      const bare = sampleAt(1_795_608_001_123, { headingDeg: null, speedMPerS: null });
      await store.commit(batchOf(1, [full, bare]));
      expect(await allSamples(store)).toEqual([full, bare]);
    });

    it('gives back oldest first, start included, end excluded', async () => {
      await store.commit(batchOf(1, [sampleAt(30), sampleAt(10), sampleAt(20)]));
      await store.commit(batchOf(2, [sampleAt(15)]));
      expect(await times(10, 30)).toEqual([10, 15, 20]);
      expect(await times()).toEqual([10, 15, 20, 30]);
    });

    it('keeps stations apart, whatever they are called', async () => {
      const hostile = `x'; DROP TABLE sample; -- "\\ % _ 北岸`;
      await store.commit(batchOf(1, [sampleAt(1), sampleAt(1, { station: hostile, headingDeg: 7 })]));
      expect((await allSamples(store, hostile)).map(({ headingDeg }) => headingDeg)).toEqual([7]);
      expect(await times()).toEqual([1]);
      expect(await store.stations()).toHaveLength(2);
      expect(await allSamples(store, 'nobody')).toEqual([]);
    });

    it('keeps the first sample of an instant, and says so', async () => {
      await store.commit(batchOf(1, [sampleAt(1), sampleAt(2)], { ledger: [row] }));
      await store.commit(batchOf(2, [sampleAt(2), sampleAt(1, { headingDeg: 9 }), sampleAt(3)]));
      expect((await allSamples(store)).map(({ atMs, headingDeg }) => [atMs, headingDeg])).toEqual([
        [1, 202.5],
        [2, 202.5],
        [3, 202.5],
      ]);
      const counts = Object.fromEntries(
        (await store.ledgerCounts()).map(({ reason, count }) => [reason, count]),
      );
      expect(counts).toEqual({ 'cut-line': 2, duplicate: 1, conflict: 1 });
    });

    it('gives back the ledger in order', async () => {
      const other = { ...row, reason: 'rubbish', fromLine: 9, got: `<b>"'; =1+1` } as const;
      await store.commit(batchOf(1, [], { ledger: [row, other] }));
      await store.commit(batchOf(2, [], { ledger: [row] }));
      expect(await ledgerOf(store)).toEqual([row, other, row].map((one) => ({ ...one, log: 'jetty-log' })));
    });

    it('remembers how far each raw log was read', async () => {
      expect(await store.progress('jetty-log')).toBeNull();
      await store.commit(batchOf(7, []));
      await store.commit(batchOf(3, [], { progress: { log: 'other', seq: 3, state: '{}' } }));
      expect(await store.progress('jetty-log')).toEqual({ log: 'jetty-log', seq: 7, state: '{"seq":7}' });
      expect((await store.progress('other'))?.seq).toBe(3);
    });

    it('changes nothing for a batch it has already', async () => {
      await store.commit(batchOf(5, [sampleAt(1)], { ledger: [row] }));
      await store.commit(batchOf(5, [sampleAt(2)], { ledger: [row] }));
      await store.commit(batchOf(4, [sampleAt(3)], { ledger: [row] }));
      expect(await times()).toEqual([1]);
      expect(await ledgerOf(store)).toHaveLength(1);
    });

    it('stores all or nothing', async () => {
      const half = batchOf(1, [sampleAt(1), sampleAt(2, { headingDeg: Number.NaN })], { ledger: [row] });
      await expect(store.commit(half)).rejects.toThrow('store/bad-sample');
      expect(await times()).toEqual([]);
      expect(await ledgerOf(store)).toEqual([]);
      expect(await store.progress('jetty-log')).toBeNull();
    });

    it('takes commits asked for at once, one after another', async () => {
      await Promise.all([1, 2, 3, 4, 5].map((seq) => store.commit(batchOf(seq, [sampleAt(seq)]))));
      expect(await times()).toEqual([1, 2, 3, 4, 5]);
    });

    it('gives columns of the same samples', async () => {
      await store.commit(
        batchOf(1, [sampleAt(1), sampleAt(2, { headingDeg: null }), sampleAt(3, { speedMPerS: null })]),
      );
      const all = [];
      for await (const columns of store.columns({ station: 'jetty', fromMs: 1, untilMs: 4 }))
        all.push(columns);
      expect(all).toHaveLength(1);
      const { atMs, headingDeg, speedMPerS, read } = all[0]!;
      expect([...atMs]).toEqual([1, 2, 3]);
      expect([...read]).toEqual([3, 2, 1]);
      expect([headingDeg[0], speedMPerS[1]]).toEqual([202.5, 3.25]);
    });

    it('takes many samples at once and gives all of them back', async () => {
      const many = Array.from({ length: 5000 }, (_, i) => sampleAt(i * 1000, { word: (i % 32).toString(2) }));
      await store.commit(batchOf(1, many));
      expect(await allSamples(store)).toEqual(many);
      expect(await store.stations()).toEqual([
        { station: 'jetty', samples: 5000, firstMs: 0, lastMs: 4_999_000 },
      ]);
    });

    it('lets samples be moved out, and says where they are', async () => {
      await store.commit(
        batchOf(1, [sampleAt(10), sampleAt(20), sampleAt(30), sampleAt(20, { station: 'pier' })]),
      );
      await store.moveOut({ station: 'jetty', fromMs: 10, untilMs: 30 }, 'samples/moved.parquet');
      expect(await times()).toEqual([30]);
      expect(await allSamples(store, 'pier')).toHaveLength(1);
      expect(await ledgerOf(store)).toMatchObject([
        { log: 'archive', reason: 'moved-out', count: 2, got: 'jetty: moved.parquet' },
      ]);
      await store.commit(batchOf(2, [sampleAt(20), sampleAt(40)]));
      expect(await times()).toEqual([20, 30, 40]);
    });

    it('forgets everything when it is told to', async () => {
      await store.commit(batchOf(5, [sampleAt(1)], { ledger: [row] }));
      await store.clear();
      expect(await store.stations()).toEqual([]);
      expect(await store.progress('jetty-log')).toBeNull();
      await store.commit(batchOf(1, [sampleAt(1)]));
      expect(await times()).toEqual([1]);
    });

    it('has everything when it is opened again', async () => {
      await store.commit(batchOf(5, [sampleAt(1), sampleAt(2)], { ledger: [row] }));
      if (!here.lasts) return expect(await times()).toEqual([1, 2]);
      await store.close();
      store = await here.open();
      expect(await times()).toEqual([1, 2]);
      await store.commit(batchOf(6, [sampleAt(2), sampleAt(3, { word: '01' })]));
      expect(await times()).toEqual([1, 2, 3]);
      expect((await store.progress('jetty-log'))?.seq).toBe(6);
    });
  });
}
