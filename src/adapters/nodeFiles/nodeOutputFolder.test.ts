import { execFileSync } from 'node:child_process';
import { mkdir, mkdtemp, readdir, readFile, rm, symlink, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { outputFolderContract, type OutputWorld } from '../../../test/contracts/outputFolder.ts';
import { nodeOutputFolder } from './nodeOutputFolder.ts';

async function realWorld(): Promise<OutputWorld> {
  const root = await mkdtemp(join(tmpdir(), 'vanewright-out-'));
  const folder = join(root, 'out');
  return {
    output: nodeOutputFolder,
    folder,
    read: (path) => readFile(join(folder, path), 'utf8').catch(() => null),
    put: async (path, text) => {
      await mkdir(dirname(join(folder, path)), { recursive: true });
      await writeFile(join(folder, path), text);
    },
    all: () => readdir(root, { recursive: true }),
    end: () => rm(root, { recursive: true, force: true }),
  };
}

outputFolderContract('the disk', realWorld);

const files = [
  { path: 'small.txt', content: 'x' },
  { path: 'large.txt', content: 'x'.repeat(200_000) },
];
const never = new AbortController().signal;

describe('nodeOutputFolder', () => {
  it('writes checksums that the common checksum tool confirms', async () => {
    const world = await realWorld();
    await world.output.write(world.folder, files, never, 'result');
    const said = execFileSync('sha256sum', ['-c', 'SHA256SUMS'], { cwd: world.folder, encoding: 'utf8' });
    expect(said.trim().split('\n')).toEqual(['small.txt: OK', 'large.txt: OK']);
    await world.end();
  });

  it('names the file that stands in the way of the folder', async () => {
    const world = await realWorld();
    await writeFile(world.folder, 'a file');
    await expect(world.output.write(world.folder, files, never, 'result')).rejects.toThrow(
      'files/not-a-folder',
    );
    await world.end();
  });

  it('puts everything back when one of several files cannot be moved', async () => {
    const world = await realWorld();
    await world.output.write(world.folder, [{ path: 'a.txt', content: 'old' }], never, 'result');
    // A file where a folder is wanted stops the second move after the first is done.
    await world.put('b', 'a file');
    const two = [
      { path: 'a.txt', content: 'new' },
      { path: 'b/c.txt', content: 'new' },
    ];
    await expect(world.output.write(world.folder, two, never, 'result')).rejects.toThrow(
      'files/not-a-folder',
    );
    expect(await world.read('a.txt')).toBe('old');
    expect((await world.all()).sort()).toEqual(['out', 'out/SHA256SUMS', 'out/a.txt', 'out/b']);
    await world.end();
  });

  it('writes through a link to a folder, and refuses a link that leads nowhere', async () => {
    const world = await realWorld();
    const link = join(dirname(world.folder), 'link');
    await symlink(world.folder, link);
    await expect(world.output.write(link, files, never, 'result')).rejects.toThrow('files/not-writable');
    await mkdir(world.folder);
    await world.output.write(link, files, never, 'result');
    expect(await world.read('small.txt')).toBe('x');
    await world.end();
  });

  it('takes away the parent folders it made when it could not write', async () => {
    const world = await realWorld();
    const impossible = [{ path: 'x'.repeat(300), content: '' }];
    const deep = join(world.folder, 'a', 'b');
    await expect(world.output.write(deep, impossible, never, 'result')).rejects.toThrow('files/not-writable');
    expect(await world.all()).toEqual([]);
    await world.end();
  });
});
