import { spawn, type ChildProcess } from 'node:child_process';
import { existsSync } from 'node:fs';
import { appendFile, mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, expect, it } from 'vitest';
import type { SourceBytes } from '../../ports/index.ts';
import { serialSource } from './serialSource.ts';

const clock = {
  nowMs: () => Date.now(),
  after: (ms: number, work: () => void) => {
    const timer = setTimeout(work, ms);
    return () => clearTimeout(timer);
  },
};
const until = async (isSo: () => boolean): Promise<void> => {
  while (!isSo()) await new Promise((done) => setTimeout(done, 10));
};

let folder: string;
let cable: ChildProcess;
const [ours, theirs] = ['ours', 'theirs'];
const path = (end: string): string => join(folder, end);

async function plug(): Promise<void> {
  cable = spawn('socat', [`pty,raw,echo=0,link=${path(ours)}`, `pty,raw,echo=0,link=${path(theirs)}`]);
  await until(() => existsSync(path(ours)) && existsSync(path(theirs)));
}

async function unplug(): Promise<void> {
  cable.kill();
  await new Promise((done) => cable.once('close', done));
}

/** Writes without holding up this process, which has to read at the other end. */
const send = (text: string): Promise<void> => appendFile(path(theirs), text);

beforeEach(async () => {
  folder = await mkdtemp(join(tmpdir(), 'vanewright-serial-'));
  await plug();
});
afterEach(async () => {
  if (cable.exitCode === null && cable.signalCode === null) await unplug();
  await rm(folder, { recursive: true, force: true });
});

it('takes every line of a port, with the time it came, and waits while it is busy', async () => {
  const came: SourceBytes[] = [];
  const source = serialSource({ path: path(ours), baud: 57_600, station: 'jetty' }, clock);
  const running = source.run(async (bytes) => {
    await new Promise((done) => setTimeout(done, 2));
    came.push(bytes);
  });
  await new Promise((done) => setTimeout(done, 100));
  const text = Array.from({ length: 2000 }, (_, i) => `line ${i} of the vane\n`).join('');
  await send(text);
  const got = (): string => came.map(({ bytes }) => Buffer.from(bytes).toString()).join('');
  await until(() => got().length === text.length);
  await source.close();
  await running;
  expect(got()).toBe(text);
  expect(came.at(-1)).toMatchObject({ isEnd: true, begin: { station: 'jetty', source: 'serial' } });
  expect(Math.abs(came[0]!.arrivedMs! - Date.now())).toBeLessThan(20_000);
});

it('opens a port again that was unplugged', async () => {
  const came: string[] = [];
  const source = serialSource({ path: path(ours), baud: 57_600, station: 'jetty', againMs: 30 }, clock);
  const running = source.run(
    async ({ bytes, isEnd }) => void came.push(isEnd ? 'END' : Buffer.from(bytes).toString()),
  );
  await new Promise((done) => setTimeout(done, 100));
  await send('before\n');
  await until(() => came.join('').includes('before\n'));
  await unplug();
  await until(() => came.includes('END'));
  await plug();
  await new Promise((done) => setTimeout(done, 200));
  await send('after\n');
  await until(() => came.join('').includes('after\n'));
  await source.close();
  await running;
  expect(came.join('')).toBe('before\nENDafter\nEND');
});

it('says when there is no such port', async () => {
  const source = serialSource({ path: path('nothing'), baud: 57_600, station: 'jetty' }, clock);
  await expect(source.run(async () => {})).rejects.toThrow('log/source-not-found');
});

it('ends when what it gives cannot be kept', async () => {
  const source = serialSource({ path: path(ours), baud: 57_600, station: 'jetty' }, clock);
  const running = source.run(async ({ isEnd }) => {
    if (!isEnd) throw new Error('the disk is full');
  });
  await new Promise((done) => setTimeout(done, 100));
  await send('line\n');
  await expect(running).rejects.toThrow('the disk is full');
});
