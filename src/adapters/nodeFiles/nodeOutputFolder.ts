import { createHash } from 'node:crypto';
import { mkdir, mkdtemp, open, readFile, rename, rm, stat } from 'node:fs/promises';
import { basename, dirname, join, resolve } from 'node:path';
import { VanewrightError } from '../../core/error/index.ts';
import type { OutputFile, OutputFolder } from '../../ports/index.ts';
import { causeOf, writeProblem } from './fileProblem.ts';

/** Name of the checksum list, in the format that the common `sha256sum -c` reads. */
export const CHECKSUMS = 'SHA256SUMS';

function sha256(content: string | Uint8Array): string {
  return createHash('sha256').update(content).digest('hex');
}

function checksumList(files: readonly OutputFile[]): string {
  return files.map(({ path, content }) => `${sha256(content)}  ${path}\n`).join('');
}

/** Path and checksum of every file an earlier run wrote; empty where there was none. */
async function earlierFiles(folder: string): Promise<Map<string, string>> {
  const text = await readFile(join(folder, CHECKSUMS), 'utf8').catch(() => '');
  const rows = text.split('\n').map((line) => /^([0-9a-f]{64}) {2}([^/\\][^\\]*)$/.exec(line));
  const inside = rows.filter((row) => row !== null && !row[2]!.split('/').includes('..'));
  return new Map(inside.map((row) => [row![2]!, row![1]!]));
}

/** Writes one file and waits until the disk has it. */
async function writeWhole(path: string, content: string | Uint8Array): Promise<void> {
  await mkdir(dirname(path), { recursive: true });
  const file = await open(path, 'w');
  try {
    await file.writeFile(content);
    await file.sync();
  } finally {
    await file.close();
  }
}

/** Takes away what an earlier run made and this one does not, unless someone has changed it since. */
async function sweep(folder: string, earlier: Map<string, string>, paths: readonly string[]) {
  const removed: string[] = [];
  const kept: string[] = [];
  for (const [path, checksum] of earlier) {
    if (paths.includes(path)) continue;
    const content = await readFile(join(folder, path)).catch(() => null);
    if (content === null) continue;
    if (sha256(content) !== checksum) {
      kept.push(path);
      continue;
    }
    await rm(join(folder, path));
    removed.push(path);
  }
  return { removed, kept };
}

async function refuseFile(folder: string): Promise<void> {
  const found = await stat(folder).catch(() => null);
  if (found === null || found.isDirectory()) return;
  throw new VanewrightError({
    code: 'files/not-a-folder',
    what: 'The place for the results is a file.',
    where: folder,
    got: 'a file',
    allowed: 'a folder, or a path where nothing is yet',
    fix: 'Name another folder with --out.',
  });
}

/** A folder where a file should go would stop the move half-way, so it is refused before. */
async function refuseFoldersAt(goal: string, paths: readonly string[]): Promise<void> {
  for (const path of paths) {
    const found = await stat(join(goal, path)).catch(() => null);
    if (!found?.isDirectory()) continue;
    throw new VanewrightError({
      code: 'files/not-writable',
      what: 'A folder stands where a file should go; nothing was changed.',
      where: join(goal, path),
      got: 'a folder',
      allowed: 'a file, or nothing',
      fix: 'Move that folder away, or name another folder with --out.',
    });
  }
}

/** Folders on this machine's disk: staged beside the goal, then moved into place file by file. */
export const nodeOutputFolder: OutputFolder = {
  async write(folder, files, stop, as) {
    const goal = resolve(folder);
    await refuseFile(goal);
    const all = as === 'result' ? [...files, { path: CHECKSUMS, content: checksumList(files) }] : files;
    const paths = all.map(({ path }) => path);
    let stage: string | null = null;
    let parent: string | undefined;
    let done = false;
    try {
      parent = await mkdir(dirname(goal), { recursive: true });
      await refuseFoldersAt(goal, paths);
      stage = await mkdtemp(join(dirname(goal), `.${basename(goal)}-`));
      for (const { path, content } of all) {
        stop.throwIfAborted();
        await writeWhole(join(stage, path), content);
      }
      stop.throwIfAborted();
      const earlier = as === 'result' ? await earlierFiles(goal) : new Map<string, string>();
      for (const path of paths) await mkdir(dirname(join(goal, path)), { recursive: true });
      for (const path of paths) await rename(join(stage, path), join(goal, path));
      done = true;
      return { paths, ...(await sweep(goal, earlier, paths)) };
    } catch (error) {
      if (stop.aborted || error instanceof VanewrightError) throw error;
      throw writeProblem(
        folder,
        causeOf(error) === 'EXDEV' ? new Error('the folder lies on two disks') : error,
      );
    } finally {
      if (stage !== null) await rm(stage, { recursive: true, force: true });
      if (!done && parent !== undefined) await rm(parent, { recursive: true, force: true });
    }
  },
};
