import { access, copyFile, mkdir, open, rename } from 'node:fs/promises';
import { basename, join } from 'node:path';
import { VanewrightError } from '../../core/error/index.ts';
import { scanFrames } from '../../core/record/index.ts';
import { logProblem } from './logProblem.ts';
import { segmentBytes, segmentFiles, syncFolder } from './segmentFile.ts';

/** What was copied. */
export interface CopiedLog {
  readonly segments: number;
  readonly entries: number;
  /** [byte] */
  readonly bytes: number;
}

async function writeWhole(path: string, bytes: Uint8Array): Promise<void> {
  const file = await open(`${path}.part`, 'w');
  await file.writeFile(bytes);
  await file.sync();
  await file.close();
  await rename(`${path}.part`, path);
}

const isThere = (path: string): Promise<boolean> =>
  access(path).then(
    () => true,
    () => false,
  );

/**
 * Copies a raw log, also while a logger writes it: every entry that was acknowledged before is in the copy.
 *
 * @param from - Folder of a raw log.
 * @param to - Folder that holds no raw log yet.
 * @throws `log/not-a-log`, `log/already-there`, `log/disk-full`, `log/not-writable`
 */
export async function copyRawLog(from: string, to: string): Promise<CopiedLog> {
  if (!(await isThere(join(from, 'name')))) {
    throw new VanewrightError({
      code: 'log/not-a-log',
      what: 'There is no raw log in that folder.',
      where: from,
      got: 'no file called name',
      allowed: 'the folder of a store, or of a backup of one',
      fix: 'Name the folder that was given to --store or --out.',
    });
  }
  if (await isThere(join(to, 'name'))) {
    throw new VanewrightError({
      code: 'log/already-there',
      what: 'There is a raw log already; two are never mixed.',
      where: to,
      got: 'a raw log',
      allowed: 'a folder without one',
      fix: 'Name a new folder.',
    });
  }
  try {
    return await copied(from, to);
  } catch (error) {
    throw logProblem(to, error);
  }
}

async function copied(from: string, to: string): Promise<CopiedLog> {
  await mkdir(to, { recursive: true });
  let total: CopiedLog = { segments: 0, entries: 0, bytes: 0 };
  for (let after = 0; ;) {
    const next = (await segmentFiles(from)).find(({ firstSeq }) => firstSeq > after);
    if (!next) break;
    const bytes = await segmentBytes(next).catch(() => null);
    if (bytes === null) continue; // compressed between the look and the reading
    const { entries, soundBytes } = scanFrames(bytes);
    const name = basename(next.path).replace(/[.]gz$/, '');
    await writeWhole(join(to, name), bytes.subarray(0, soundBytes));
    total = {
      segments: total.segments + 1,
      entries: total.entries + entries.length,
      bytes: total.bytes + soundBytes,
    };
    after = next.firstSeq;
  }
  // The name comes last: a copy without it is not taken for a log.
  await copyFile(join(from, 'name'), join(to, 'name'));
  await syncFolder(to);
  return total;
}
