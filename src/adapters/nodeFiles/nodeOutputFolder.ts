import { access, lstat, mkdir, mkdtemp, open, readFile, rename, rm, rmdir } from 'node:fs/promises';
import { dirname, join, resolve } from 'node:path';
import { VanewrightError } from '../../core/error/index.ts';
import type { OutputFile, OutputFolder, StopSign } from '../../ports/index.ts';
import { checksumList, CHECKSUMS, earlierFiles, sha256 } from './checksums.ts';
import { writeProblem } from './fileProblem.ts';
import { moveIn, refuseFoldersAt } from './moveIn.ts';

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

/** Takes away a folder and those above it as long as they are empty and below `top`. */
async function removeEmpty(folder: string, top: string): Promise<void> {
  for (let at = folder; at.startsWith(top) && at !== top; at = dirname(at)) {
    const isGone = await rmdir(at).then(
      () => true,
      () => false,
    );
    if (!isGone) return;
  }
}

/** Takes away what an earlier run made and this one does not, unless someone has changed it since. */
async function sweep(goal: string, earlier: ReadonlyMap<string, string>, paths: readonly string[]) {
  const removed: string[] = [];
  const kept: string[] = [];
  for (const [path, checksum] of earlier) {
    if (paths.includes(path)) continue;
    const content = await readFile(join(goal, path)).catch(() => null);
    if (content === null) continue;
    if (sha256(content) !== checksum) {
      kept.push(path);
      continue;
    }
    await rm(join(goal, path));
    await removeEmpty(dirname(join(goal, path)), goal);
    removed.push(path);
  }
  return { removed, kept };
}

/** A name beside a file that nothing has yet. */
async function freeName(path: string): Promise<string> {
  for (let i = 1; ; i++) {
    const name = i === 1 ? `${path}.yours` : `${path}.yours-${i}`;
    if (
      await access(name).then(
        () => false,
        () => true,
      )
    )
      return name;
  }
}

/** Puts back, under another name, files that a maker had changed or that were never ours. */
async function returnYours(
  goal: string,
  old: string,
  earlier: ReadonlyMap<string, string>,
  paths: readonly string[],
) {
  const setAside: string[] = [];
  for (const path of paths) {
    if (path === CHECKSUMS) continue;
    const content = await readFile(join(old, path)).catch(() => null);
    if (content === null || sha256(content) === earlier.get(path)) continue;
    const name = await freeName(join(goal, path));
    await rename(join(old, path), name);
    setAside.push(name.slice(goal.length + 1).replaceAll('\\', '/'));
  }
  return setAside;
}

/**
 * Makes the folder; gives the highest one that was not there before, so that it can be taken away again.
 *
 * One level at a time: the platform's own recursive way never ends where a folder cannot be made, as below /proc.
 */
async function makeFolder(goal: string): Promise<string | null> {
  const missing: string[] = [];
  for (let at = goal; (await lstat(at).catch(() => null)) === null && at !== dirname(at); at = dirname(at)) {
    missing.unshift(at);
  }
  for (const folder of missing) {
    await mkdir(folder).catch((error: unknown) => {
      // Another run may have made it in the meantime.
      if (!(error instanceof Error && 'code' in error && error.code === 'EEXIST')) throw error;
    });
  }
  return missing[0] ?? null;
}

/** Earlier checksums that stay in the list when only a part is written anew. */
function leftStanding(
  earlier: ReadonlyMap<string, string>,
  files: readonly OutputFile[],
): Map<string, string> {
  return new Map([...earlier].filter(([path]) => !files.some((file) => file.path === path)));
}

async function stageAll(stage: string, files: readonly OutputFile[], stop: StopSign): Promise<void> {
  for (const { path, content } of files) {
    stop.throwIfAborted();
    await writeWhole(join(stage, path), content);
  }
  stop.throwIfAborted();
}

/** Folders on this machine's disk: staged inside the goal, then moved into place all together. */
export const nodeOutputFolder: OutputFolder = {
  async write(folder, files, stop, as) {
    const goal = resolve(folder);
    let stage: string | null = null;
    let madeFolder: string | null = null;
    try {
      const earlier = as === 'addition' ? new Map<string, string>() : await earlierFiles(goal);
      madeFolder = await makeFolder(goal);
      stage = await mkdtemp(join(goal, '.vanewright-'));
      const standing = as === 'part' ? leftStanding(earlier, files) : new Map<string, string>();
      const sums = new Map([
        ...files.map(({ path, content }) => [path, sha256(content)] as const),
        ...standing,
      ]);
      const all = as === 'addition' ? files : [...files, checksumList(sums)];
      const paths = all.map(({ path }) => path);
      await refuseFoldersAt(goal, paths);
      await stageAll(join(stage, 'new'), all, stop);
      await moveIn(join(stage, 'new'), goal, join(stage, 'old'), paths);
      madeFolder = null;
      const setAside = await returnYours(goal, join(stage, 'old'), earlier, paths);
      const swept = as === 'result' ? await sweep(goal, earlier, paths) : { removed: [], kept: [] };
      return { paths, setAside, left: [...standing.keys()], ...swept };
    } catch (error) {
      if (stop.aborted || error instanceof VanewrightError) throw error;
      throw writeProblem(folder, error);
    } finally {
      if (stage !== null) await rm(stage, { recursive: true, force: true });
      if (madeFolder !== null) await removeEmpty(goal, dirname(madeFolder));
    }
  },
};
