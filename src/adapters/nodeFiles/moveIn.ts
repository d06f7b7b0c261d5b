import { lstat, mkdir, rename, rm } from 'node:fs/promises';
import { dirname, join } from 'node:path';
import { VanewrightError } from '../../core/error/index.ts';

/** Whether anything stands at a path, links that lead nowhere included. */
async function stands(path: string): Promise<boolean> {
  return (await lstat(path).catch(() => null)) !== null;
}

/** A folder where a file should go cannot be replaced, so it is refused before anything moves. */
export async function refuseFoldersAt(goal: string, paths: readonly string[]): Promise<void> {
  for (const path of paths) {
    const found = await lstat(join(goal, path)).catch(() => null);
    if (!found?.isDirectory()) continue;
    throw new VanewrightError({
      code: 'files/not-writable',
      what: 'A folder stands where a file should go; nothing was changed.',
      where: join(goal, path),
      got: 'a folder',
      allowed: 'a file, or nothing',
      fix: 'Move that folder away, or name another folder.',
    });
  }
}

/** Moves one file, making its folder. */
async function move(from: string, to: string): Promise<void> {
  await mkdir(dirname(to), { recursive: true });
  await rename(from, to);
}

/**
 * Moves whole files into place; what stood there goes to `old`. When one move fails, all are undone.
 *
 * @param stage - Folder with the new files, on the same disk as the goal.
 * @param old - Folder for what stood in the goal, on the same disk too.
 */
export async function moveIn(
  stage: string,
  goal: string,
  old: string,
  paths: readonly string[],
): Promise<void> {
  const undo: (() => Promise<void>)[] = [];
  try {
    for (const path of paths) {
      const [source, target, saved] = [join(stage, path), join(goal, path), join(old, path)];
      if (await stands(target)) {
        await move(target, saved);
        undo.push(() => rename(saved, target));
      }
      await move(source, target);
      undo.push(() => rm(target, { force: true }));
    }
  } catch (error) {
    for (const step of undo.reverse()) await step();
    throw error;
  }
}
