import { spawn } from 'node:child_process';
import { appendFile, mkdtemp, readdir, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { allSamples, batchOf, sampleAt, sampleStoreContract } from '../../../test/contracts/sampleStore.ts';
import { ROOT } from '../../../test/support/sourceFiles.ts';
import { duckdbSampleStore } from './duckdbSampleStore.ts';

const ownFolder = (): Promise<string> => mkdtemp(join(tmpdir(), 'vanewright-duckdb-'));

sampleStoreContract('an embedded file', async () => {
  const folder = await ownFolder();
  return {
    open: () => duckdbSampleStore(join(folder, 'record.duckdb')),
    end: () => rm(folder, { recursive: true, force: true }),
    lasts: true,
  };
});

describe('a store in a file', () => {
  let folder: string;
  beforeEach(async () => {
    folder = await ownFolder();
  });
  afterEach(() => rm(folder, { recursive: true, force: true }));
  const path = (): string => join(folder, 'record.duckdb');

  /** Another process commits one batch whole and one after it, then is killed before it can tidy up. */
  async function killedInMidLife(): Promise<void> {
    const script = `
      import { duckdbSampleStore } from ${JSON.stringify(join(ROOT, 'dist/adapters/duckdb/index.js'))};
      const store = await duckdbSampleStore(process.argv[1]);
      const sample = (atMs) => ({ station: 'jetty', atMs, withinMs: 1, headingDeg: 1, halfWidthDeg: null, meanHeadingDeg: null,
        agreement: null, speedMPerS: 1, gustMPerS: null, flags: 0, word: null, counts: null, pulses: null, edges: null, stream: 1,
        line: 1 });
      const batch = (seq) => ({ samples: [sample(seq)], ledger: [], progress: { log: 'jetty-log', seq, state: '{}' } });
      await store.commit(batch(1));
      await store.connection.run('CHECKPOINT');
      await store.commit(batch(2));
      console.log('committed');
      setInterval(() => {}, 1000);`;
    const child = spawn(process.execPath, ['--input-type=module', '-e', script, path()]);
    await new Promise((done) => child.stdout.once('data', done));
    child.kill('SIGKILL');
    await new Promise((done) => child.once('close', done));
  }

  it('has what was committed when its process was killed', async () => {
    await killedInMidLife();
    const store = await duckdbSampleStore(path());
    expect((await allSamples(store)).map(({ atMs }) => atMs)).toEqual([1, 2]);
    expect(store.putAside).toEqual([]);
    await store.close();
  });

  it.each([
    ['zeros', Buffer.alloc(512)],
    ['garbage', Buffer.from('\u00d7garbage'.repeat(60), 'latin1')],
  ])('opens after %s at the end of its log, and knows how far it got', async (_, tail) => {
    await killedInMidLife();
    await appendFile(`${path()}.wal`, tail);
    const store = await duckdbSampleStore(path());
    const seq = (await store.progress('jetty-log'))?.seq ?? 0;
    // What is stored is what the progress says, so that the raw log can fill up the rest.
    expect((await allSamples(store)).map(({ atMs }) => atMs)).toEqual([1, 2].slice(0, seq));
    expect(seq).toBeGreaterThanOrEqual(1);
    await store.commit(batchOf(3, [sampleAt(3)]));
    await store.close();
    const again = await duckdbSampleStore(path());
    expect((await again.progress('jetty-log'))?.seq).toBe(3);
    await again.close();
  });

  it('puts a file aside that is none, and begins anew', async () => {
    await writeFile(path(), 'this is no database, but a letter from the boathouse'.repeat(300));
    const store = await duckdbSampleStore(path());
    expect(await store.stations()).toEqual([]);
    expect(store.putAside.map((name) => name.replace(/^.*[\\/]/, ''))).toEqual(['record.duckdb.damaged-1']);
    await store.close();
    expect((await readdir(folder)).sort()).toContain('record.duckdb.damaged-1');
  });

  it('is refused to a second process while it is open, and says why', async () => {
    const store = await duckdbSampleStore(path());
    const script = `
      import { duckdbSampleStore } from ${JSON.stringify(join(ROOT, 'dist/adapters/duckdb/index.js'))};
      await duckdbSampleStore(process.argv[1]).then(() => console.log('open'), (e) => console.log(e.message));`;
    const child = spawn(process.execPath, ['--input-type=module', '-e', script, path()]);
    let said = '';
    child.stdout.on('data', (text) => (said += String(text)));
    await new Promise((done) => child.once('close', done));
    expect(said).toContain('store/in-use');
    expect(said).toContain(`PID ${process.pid}`);
    await store.close();
  });

  it('says when it cannot be made, or was made by a later version', async () => {
    await expect(duckdbSampleStore(join(folder, 'no', 'such', 'place.duckdb'))).rejects.toThrow(
      'store/not-writable',
    );
    const store = await duckdbSampleStore(path());
    await store.connection.run('UPDATE layout SET version = 99');
    await store.close();
    await expect(duckdbSampleStore(path())).rejects.toThrow('store/newer');
  });
});
