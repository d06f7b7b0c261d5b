import { appendFile, mkdtemp, readdir, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { allTexts, rawEntry } from '../../../test/contracts/rawLog.ts';
import { copyRawLog } from './copyRawLog.ts';
import { fileRawLog } from './fileRawLog.ts';

it('copies a log while it is written, and the copy opens as the log would', async () => {
  const folder = await mkdtemp(join(tmpdir(), 'vanewright-copy-'));
  const [from, to] = [join(folder, 'from'), join(folder, 'to')];
  const log = await fileRawLog(from, { segmentBytes: 2000 });
  const before = Array.from({ length: 200 }, (_, i) => `line ${i}`);
  for (const text of before) await log.append([rawEntry(text)]);
  let isOver = false;
  const writing = (async () => {
    for (let i = 200; !isOver; i++) await log.append([rawEntry(`line ${i}`)]);
  })();
  const { entries } = await copyRawLog(from, to);
  isOver = true;
  await writing;
  expect(entries).toBeGreaterThanOrEqual(200);
  const copy = await fileRawLog(to);
  expect((await allTexts(copy)).slice(0, 200)).toEqual(before);
  expect(copy.name).toBe(log.name);
  expect(await copy.append([rawEntry('goes on')])).toBe(copy.lastSeq);
  await copy.close();
  await log.close();
  await rm(folder, { recursive: true, force: true });
});

it('leaves a torn end out, and refuses what is no log and to mix two', async () => {
  const folder = await mkdtemp(join(tmpdir(), 'vanewright-copy-'));
  const [from, to] = [join(folder, 'from'), join(folder, 'to')];
  await expect(copyRawLog(from, to)).rejects.toThrow('log/not-a-log');
  const log = await fileRawLog(from);
  await log.append([rawEntry('a')]);
  await log.close();
  const name = (await readdir(from)).find((file) => file.endsWith('.raw'))!;
  await appendFile(join(from, name), Buffer.alloc(100));
  expect(await copyRawLog(from, to)).toMatchObject({ entries: 1, segments: 1 });
  const copy = await fileRawLog(to);
  expect(copy.damage).toEqual([]);
  await copy.close();
  await expect(copyRawLog(from, to)).rejects.toThrow('log/already-there');
  await rm(folder, { recursive: true, force: true });
});
