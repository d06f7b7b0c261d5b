import { mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, expect, it } from 'vitest';
import { freshToken, pagesFolder, projectOf } from './wire.ts';

let folder: string;
beforeEach(async () => {
  folder = await mkdtemp(join(tmpdir(), 'vanewright-open-'));
});
afterEach(() => rm(folder, { recursive: true, force: true }));

it('opens a file, and a folder where a file may begin', async () => {
  await writeFile(join(folder, 'vane.yaml'), 'vanewright: 1\n');
  expect((await projectOf(join(folder, 'vane.yaml'))).path).toBe('vane.yaml');
  expect((await projectOf(folder)).path).toBe('instrument.yaml');
});

it('says when there is no such file, no such folder, no such kind, and no page to show', async () => {
  await expect(projectOf(join(folder, 'none.yaml'))).rejects.toThrow('files/not-found');
  await expect(projectOf(join(folder, 'none/vane.yaml'))).rejects.toThrow('open/no-folder');
  await writeFile(join(folder, 'vane.exe'), '');
  await expect(projectOf(join(folder, 'vane.exe'))).rejects.toThrow('open/file-kind');
  expect(() => pagesFolder(folder)).toThrow('open/no-pages');
});

it('makes tokens that are long and differ', () => {
  const tokens = new Set(Array.from({ length: 100 }, () => freshToken()));
  expect(tokens.size).toBe(100);
  for (const token of tokens) expect(token).toMatch(/^[\w-]{32}$/);
});
