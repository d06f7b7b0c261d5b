import { execFileSync } from 'node:child_process';
import { chmod, mkdir, mkdtemp, readdir, readFile, rm, stat, symlink, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import type { ProjectFolder } from '../../ports/index.ts';
import { nodeProjectFolder } from './nodeProjectFolder.ts';

let top: string;
let root: string;
let folder: ProjectFolder;
beforeEach(async () => {
  top = await mkdtemp(join(tmpdir(), 'vanewright-project-'));
  root = join(top, 'jetty');
  await mkdir(root);
  await writeFile(join(top, 'secret.txt'), 'secret');
  await writeFile(join(root, 'vane.yaml'), 'old');
  folder = await nodeProjectFolder(root);
});
afterEach(() => rm(top, { recursive: true, force: true }));

const bytes = (text: string): Uint8Array => new TextEncoder().encode(text);
const textIn = (path: string): Promise<string> => readFile(join(root, path), 'utf8');

describe('a project folder', () => {
  it('changes a file only from the content that the change began from', async () => {
    const read = (await folder.read('vane.yaml', 100))!;
    const version = await folder.write('vane.yaml', bytes('new'), read.version);
    expect(await textIn('vane.yaml')).toBe('new');
    await expect(folder.write('vane.yaml', bytes('late'), read.version)).rejects.toThrow(
      'open/changed-elsewhere',
    );
    await expect(folder.write('vane.yaml', bytes('late'), null)).rejects.toThrow('open/changed-elsewhere');
    await expect(folder.write('none.yaml', bytes('late'), version)).rejects.toThrow('open/changed-elsewhere');
    expect(await textIn('vane.yaml')).toBe('new');
    expect(await readdir(root)).toEqual(['vane.yaml']);
  });

  it('lets one of two saves at once win, and says so to the other', async () => {
    const { version } = (await folder.read('vane.yaml', 100))!;
    const ends = await Promise.allSettled(
      ['a', 'b'].map((text) => folder.write('vane.yaml', bytes(text), version)),
    );
    expect(ends.map(({ status }) => status)).toEqual(['fulfilled', 'rejected']);
    expect(await textIn('vane.yaml')).toBe('a');
  });

  it('makes new files with their folders, keeps the rights of old ones, and lists them', async () => {
    await chmod(join(root, 'vane.yaml'), 0o600);
    await folder.write('vane.yaml', bytes('new'), (await folder.read('vane.yaml', 100))!.version);
    expect((await stat(join(root, 'vane.yaml'))).mode & 0o777).toBe(0o600);
    await folder.write('recordings/2026/turn-1.csv', bytes('1,2'), null);
    await mkdir(join(root, '.git'));
    await writeFile(join(root, '.git/config.txt'), '');
    await writeFile(join(root, 'run.sh'), '');
    expect((await folder.list()).files.map(({ path }) => path)).toEqual([
      'vane.yaml',
      'recordings/2026/turn-1.csv',
    ]);
  });

  it.each([
    '../secret.txt',
    'a/../../secret.txt',
    '/etc/passwd.txt',
    '..\\secret.txt',
    'a\\b.txt',
    'C:secret.txt',
    'vane.yaml:stream.txt',
    'vane.yaml\0.txt',
    'a//b.txt',
    './vane.yaml',
    '.ssh/known.txt',
    'nul.txt',
    'a/CON.txt',
    'a./b.txt',
    'a /b.txt',
    '',
    `${'x'.repeat(300)}.txt`,
  ])('refuses %j', async (path) => {
    await expect(folder.read(path, 100)).rejects.toThrow('open/outside-project');
    await expect(folder.write(path, bytes('x'), null)).rejects.toThrow('open/outside-project');
    expect(await readFile(join(top, 'secret.txt'), 'utf8')).toBe('secret');
  });

  it.each(['run.sh', 'page.html', 'vane', 'picture.svg', 'a.yaml.exe'])('takes no %s', async (path) => {
    await expect(folder.write(path, bytes('x'), null)).rejects.toThrow('open/file-kind');
  });

  it('follows links inside the folder, and none that lead out of it', async () => {
    await symlink('vane.yaml', join(root, 'inside.yaml'));
    await symlink(join(top, 'secret.txt'), join(root, 'out.txt'));
    await symlink(top, join(root, 'up'));
    await symlink(join(top, 'not-yet.txt'), join(root, 'dangling.txt'));
    expect((await folder.read('inside.yaml', 100))!.bytes.toString()).toBe('old');
    for (const path of ['out.txt', 'up/secret.txt', 'up/new.txt', 'dangling.txt', 'up/deep/new.txt']) {
      await expect(folder.write(path, bytes('x'), null), path).rejects.toThrow('open/outside-project');
    }
    await expect(folder.read('up/secret.txt', 100)).rejects.toThrow('open/outside-project');
    expect((await readdir(top)).sort()).toEqual(['jetty', 'secret.txt']);
    expect((await folder.list()).files.map(({ path }) => path)).toEqual(['vane.yaml']);
  });

  it('reads nothing that is too large, and waits for no pipe', async () => {
    await expect(folder.read('vane.yaml', 2)).rejects.toThrow('open/too-large');
    execFileSync('mkfifo', [join(root, 'pipe.txt')]);
    expect(await folder.read('pipe.txt', 100)).toBeNull();
    expect(await folder.read('none.txt', 100)).toBeNull();
  });

  it('says what stands in the way of a file', async () => {
    await expect(folder.write('vane.yaml/below.txt', bytes('x'), null)).rejects.toThrow('files/not-writable');
    await expect(nodeProjectFolder(join(root, 'vane.yaml'))).rejects.toThrow('open/no-folder');
    await expect(nodeProjectFolder(join(root, 'none'))).rejects.toThrow('open/no-folder');
  });
});
