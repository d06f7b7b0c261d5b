import { spawn, spawnSync } from 'node:child_process';
import { appendFile, mkdtemp, readdir, readFile, rm, truncate, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { allTexts, rawEntry, rawLogContract } from '../../../test/contracts/rawLog.ts';
import { ROOT } from '../../../test/support/sourceFiles.ts';
import { fileRawLog } from './fileRawLog.ts';

const ownFolder = (): Promise<string> => mkdtemp(join(tmpdir(), 'vanewright-raw-'));

for (const segmentBytes of [16 * 1024 * 1024, 100]) {
  rawLogContract(`a folder with segments of ${segmentBytes} bytes`, async () => {
    const folder = await ownFolder();
    return {
      open: () => fileRawLog(folder, { segmentBytes }),
      end: () => rm(folder, { recursive: true, force: true }),
    };
  });
}

describe('a raw log in files', () => {
  let folder: string;
  beforeEach(async () => {
    folder = await ownFolder();
  });
  afterEach(() => rm(folder, { recursive: true, force: true }));

  const lastFile = async (): Promise<string> => {
    const names = (await readdir(folder)).filter((name) => name.endsWith('.raw'));
    return join(folder, names.sort().at(-1)!);
  };
  const write = async (...texts: readonly string[]): Promise<void> => {
    const log = await fileRawLog(folder);
    for (const text of texts) await log.append([rawEntry(text)]);
    await log.close();
  };
  const reopened = async () => {
    const log = await fileRawLog(folder);
    const texts = await allTexts(log);
    const next = await log.append([rawEntry('next')]);
    await log.close();
    return { texts, next, damage: log.damage.map(({ place, looks }) => `${place} ${looks}`) };
  };

  it('goes on after zeros, garbage or a torn entry at its end', async () => {
    await write('a', 'b');
    await appendFile(await lastFile(), Buffer.alloc(4096));
    expect(await reopened()).toEqual({ texts: ['a', 'b'], next: 3, damage: ['tail zeroed'] });
    await appendFile(await lastFile(), Buffer.from('\u00d7 garbage \u0091\u0001'.repeat(9), 'latin1'));
    expect(await reopened()).toEqual({
      texts: ['a', 'b', 'next'],
      next: 4,
      damage: ['tail garbage', 'tail zeroed'],
    });
    const path = await lastFile();
    await truncate(path, (await readFile(path)).length - 3);
    expect((await reopened()).damage[0]).toBe('tail torn');
  });

  it('gives every entry around a spoiled one', async () => {
    await write('a', 'b', 'c');
    const path = await lastFile();
    const bytes = await readFile(path);
    bytes[bytes.length / 3 + 36]! ^= 4;
    await writeFile(path, bytes);
    expect(await reopened()).toMatchObject({ texts: ['a', 'c'], next: 4, damage: ['middle torn'] });
  });

  it('compresses closed segments, and trusts a copy only once it is whole', async () => {
    const log = await fileRawLog(folder, { segmentBytes: 4000 });
    const texts = Array.from({ length: 400 }, (_, i) => `vw1 ${i} line of a vane on the jetty\n`);
    for (const text of texts) await log.append([rawEntry(text)]);
    await log.close();
    const names = (await readdir(folder)).sort();
    expect(names.filter((name) => name.endsWith('.raw.gz')).length).toBeGreaterThan(5);
    expect(names.filter((name) => name.endsWith('.raw'))).toHaveLength(1);
    // A copy that was cut off while it was written lies beside its segment.
    const first = names[0]!;
    const back = spawnSync('gzip', ['-dc', join(folder, first)]).stdout;
    await writeFile(join(folder, first.replace('.gz', '')), back);
    await truncate(join(folder, first), 20);
    expect((await reopened()).texts).toEqual(texts);
  });

  it('is written by one process at a time, and says by which', async () => {
    const log = await fileRawLog(folder);
    await expect(fileRawLog(folder)).rejects.toThrow(`process ${process.pid}`);
    await expect(fileRawLog(folder)).rejects.toThrow('log/in-use');
    await log.close();
    // The lock of a process that is gone, or of another one with the same number, holds nobody up.
    await writeFile(join(folder, 'lock'), '999999999 1');
    await (await fileRawLog(folder)).close();
    await writeFile(join(folder, 'lock'), `${process.pid} 1`);
    await (await fileRawLog(folder)).close();
  });

  it('stops cleanly when the disk is full, and goes on when there is room', async () => {
    // The shell gives the process files of at most 64 blocks of 512 or 1024 bytes, which is a full disk to it.
    const script = `
      import { fileRawLog } from ${JSON.stringify(join(ROOT, 'dist/adapters/rawLogFiles/index.js'))};
      const log = await fileRawLog(process.argv[1]);
      const payload = new Uint8Array(1000).fill(65);
      let kept = 0;
      try {
        for (;;) { await log.append([{ kind: 'bytes', stream: 1, arrivedMs: null, payload }]); kept++; }
      } catch (error) {
        const again = await log.append([{ kind: 'bytes', stream: 1, arrivedMs: null, payload: payload.slice(0, 8) }]).then(() => 'room', (e) => e.problems[0].code);
        console.log(JSON.stringify({ kept, code: error.problems[0].code, again, lastSeq: log.lastSeq }));
      }
      await log.close();`;
    const said = spawnSync(
      'sh',
      ['-c', `trap '' XFSZ; ulimit -f 64; exec node --input-type=module -e "$0" "$1"`, script, folder],
      { encoding: 'utf8' },
    );
    const { kept, code, again, lastSeq } = JSON.parse(said.stdout) as Record<string, unknown>;
    expect(code).toBe('log/disk-full');
    expect(kept).toBeGreaterThan(10);
    // A small entry still fits behind the last whole one.
    expect([again, lastSeq]).toEqual(['room', (kept as number) + 1]);
    const { texts, damage } = await reopened();
    expect(texts).toHaveLength((kept as number) + 1);
    expect(damage).toEqual([]);
  });

  it('says when its folder cannot be written', async () => {
    await writeFile(join(folder, 'file'), 'x');
    await expect(fileRawLog(join(folder, 'file'))).rejects.toThrow('log/not-writable');
  });
});

describe('a logger killed at any moment', () => {
  const KILLS = 200;
  const FOLDERS = 5;

  /** Runs a logger on the folder until it is killed; gives back the texts it acknowledged. */
  function killed(folder: string, run: number, afterMs: number): Promise<string[]> {
    const script = `
      import { fileRawLog } from ${JSON.stringify(join(ROOT, 'dist/adapters/rawLogFiles/index.js'))};
      import { writeSync } from 'node:fs';
      const log = await fileRawLog(process.argv[1], { segmentBytes: 3000 });
      for (let i = 0; ; i++) {
        const text = process.argv[2] + ':' + i + ' ' + 'x'.repeat(i % 90);
        await log.append([{ kind: 'bytes', stream: 1, arrivedMs: null, payload: Buffer.from(text) }]);
        writeSync(1, text + '\\n');
      }`;
    return new Promise((done) => {
      const child = spawn(process.execPath, ['--input-type=module', '-e', script, folder, String(run)]);
      let said = '';
      child.stdout.setEncoding('utf8').on('data', (text: string) => {
        if (said === '') setTimeout(() => child.kill('SIGKILL'), afterMs);
        said += text;
      });
      child.on('close', () => done(said.split('\n').slice(0, -1)));
    });
  }

  async function killedOften(seed: number): Promise<{ acknowledged: string[]; texts: string[] }> {
    const folder = await ownFolder();
    const acknowledged: string[] = [];
    for (let run = 0; run < KILLS / FOLDERS; run++) {
      // Draws over a few milliseconds hit writing, syncing, closing a segment and compressing it alike.
      acknowledged.push(...(await killed(folder, run, (run * 7 + seed * 3) % 23)));
    }
    const log = await fileRawLog(folder);
    const texts = await allTexts(log);
    await log.close();
    await rm(folder, { recursive: true, force: true });
    return { acknowledged, texts };
  }

  it('has lost nothing it acknowledged, 200 times over', async () => {
    // Several loggers at a time, each on a folder of its own, since most of the time goes into waiting.
    const kept = await Promise.all(Array.from({ length: FOLDERS }, (_, i) => killedOften(i)));
    for (const { acknowledged, texts } of kept) {
      const there = new Set(texts);
      expect(acknowledged.filter((text) => !there.has(text))).toEqual([]);
      expect(there.size).toBe(texts.length);
      expect(new Set(acknowledged.map((text) => text.split(':')[0])).size).toBe(KILLS / FOLDERS);
      // At most one append was under way at each kill.
      expect(texts.length - acknowledged.length).toBeLessThanOrEqual(KILLS / FOLDERS);
    }
  }, 240_000);
});
