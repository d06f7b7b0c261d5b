import { lstat, mkdir, realpath } from 'node:fs/promises';
import { basename, dirname, join, sep } from 'node:path';
import { VanewrightError } from '../../core/error/index.ts';
import type { ProjectFolder } from '../../ports/index.ts';
import { projectFiles } from './projectFiles.ts';
import { leadsOut, projectPath } from './projectPath.ts';
import { changedElsewhere, readWhole, versionOf, writeWhole } from './wholeFile.ts';

/** A file that is larger than the largest recording was not made by saving it here. [byte] */
const SAVED_MOST = 64 * 1024 * 1024;

const causeOf = (error: unknown): string =>
  error instanceof Error && 'code' in error ? String(error.code) : String(error);

/** The real place of a path, links followed; `null` where nothing is. */
function realPlace(path: string): Promise<string | null> {
  return realpath(path).catch(() => null);
}

/** Where a path really leads; `null` when a name of it does not exist. @throws `open/outside-project` */
async function placeOf(root: string, path: string): Promise<string | null> {
  const place = await realPlace(join(root, ...projectPath(path)));
  if (place !== null && !place.startsWith(root + sep)) throw leadsOut(path);
  return place;
}

/** The place of a new file; its folders are made, each only once it is known where the one above really is. */
async function newPlaceOf(root: string, path: string): Promise<string> {
  const names = projectPath(path);
  let folder = root;
  for (const name of names.slice(0, -1)) {
    const below = join(folder, name);
    await mkdir(below).catch((error: unknown) => {
      if (causeOf(error) !== 'EEXIST') throw error;
    });
    folder = (await realPlace(below)) ?? below;
    if (!folder.startsWith(root + sep)) throw leadsOut(path);
  }
  const place = join(folder, names.at(-1)!);
  // A link that leads nowhere would make a file wherever it points.
  if ((await lstat(place).catch(() => null))?.isSymbolicLink()) throw leadsOut(path);
  return place;
}

function notWritable(path: string, error: unknown): VanewrightError {
  if (error instanceof VanewrightError) return error;
  const cause = causeOf(error);
  if (cause === 'EEXIST') return changedElsewhere(path);
  const isFull = cause === 'ENOSPC' || cause === 'EDQUOT';
  return new VanewrightError({
    code: isFull ? 'files/disk-full' : 'files/not-writable',
    what: isFull ? 'There is no room left; the file was left as it is.' : 'The file could not be written.',
    where: path,
    got: cause,
    allowed: 'a folder with some free space that you may write to',
    fix: 'Free some space or check who owns the folder; then save again.',
  });
}

/**
 * A folder of this machine's disk.
 *
 * @param path - Of the folder; links to it are followed once, here.
 * @throws `open/no-folder` when there is none.
 */
export async function nodeProjectFolder(path: string): Promise<ProjectFolder> {
  const root = await realPlace(path);
  if (root === null || !(await lstat(root)).isDirectory()) {
    throw new VanewrightError({
      code: 'open/no-folder',
      what: 'There is no such folder for a project.',
      where: path,
      got: root === null ? 'nothing at that path' : 'a file',
      allowed: 'an instrument file, in a folder',
      fix: 'Make the folder, or begin with: vanewright new my-vane',
    });
  }
  // One save at a time, so that no two of them begin from the same content.
  let last: Promise<unknown> = Promise.resolve();

  async function save(to: string, bytes: Uint8Array, version: string | null): Promise<string> {
    const place = await placeOf(root!, to);
    const found = place === null ? null : await readWhole(place, SAVED_MOST);
    if ((found?.version ?? null) !== version) throw changedElsewhere(to);
    await writeWhole(place ?? (await newPlaceOf(root!, to)), bytes, place === null);
    return versionOf(bytes);
  }

  return {
    name: basename(root) || dirname(root),
    list: () => projectFiles(root),
    async read(from, mostBytes) {
      const place = await placeOf(root, from);
      return place === null ? null : readWhole(place, mostBytes);
    },
    write(to, bytes, version) {
      const mine = last.then(() =>
        save(to, bytes, version).catch((error: unknown) => {
          throw notWritable(to, error);
        }),
      );
      last = mine.catch(() => {});
      return mine;
    },
  };
}
