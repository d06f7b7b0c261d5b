import { createHash, randomUUID } from 'node:crypto';
import { constants } from 'node:fs';
import { link, open, rename, rm, stat } from 'node:fs/promises';
import { basename, dirname, join } from 'node:path';
import { VanewrightError } from '../../core/error/index.ts';
import type { ProjectFile } from '../../ports/index.ts';

/** Name of a content. */
export function versionOf(bytes: Uint8Array): string {
  return createHash('sha256').update(bytes).digest('hex');
}

/** Whole content of a plain file; `null` when nothing or no file is there. Pipes and devices are never opened. */
export async function readWhole(path: string, mostBytes: number): Promise<ProjectFile | null> {
  const found = await stat(path).catch(() => null);
  if (!found?.isFile()) return null;
  // The path has no links left; one that is put there just now is not followed.
  const file = await open(path, constants.O_RDONLY | (constants.O_NOFOLLOW ?? 0));
  try {
    const buffer = Buffer.alloc(Math.min(found.size, mostBytes) + 1);
    let filled = 0;
    while (filled < buffer.length) {
      const { bytesRead } = await file.read(buffer, filled, buffer.length - filled, null);
      if (bytesRead === 0) break;
      filled += bytesRead;
    }
    if (filled > mostBytes) throw tooLarge(basename(path), `${found.size} bytes`, mostBytes);
    const bytes = buffer.subarray(0, filled);
    return { bytes, version: versionOf(bytes) };
  } finally {
    await file.close();
  }
}

/** A file that is longer than such a file can be. */
function tooLarge(where: string, got: string, mostBytes: number): VanewrightError {
  return new VanewrightError({
    code: 'open/too-large',
    what: 'That is larger than such a file can be.',
    where,
    got,
    allowed: `${mostBytes} bytes or fewer`,
    fix: 'Check that it is the right file, or split a long recording.',
  });
}

/** What stands in the way of a save that began from another content. */
export function changedElsewhere(path: string): VanewrightError {
  return new VanewrightError({
    code: 'open/changed-elsewhere',
    what: 'The file has been changed since it was read; it was left as it is.',
    where: path,
    got: 'another content',
    allowed: 'the content that the change began from',
    fix: 'Read the file again, then decide whose change stays.',
  });
}

/** Writes beside the file and moves it there whole; a new file never takes the place of one that came meanwhile. */
export async function writeWhole(path: string, bytes: Uint8Array, isNew: boolean): Promise<void> {
  const draft = join(dirname(path), `.${basename(path).slice(0, 80)}-${randomUUID()}`);
  try {
    const mode = isNew ? 0o644 : (await stat(path)).mode & 0o777;
    const file = await open(draft, 'wx', mode);
    try {
      await file.writeFile(bytes);
      await file.sync();
    } finally {
      await file.close();
    }
    if (isNew) await link(draft, path);
    else await rename(draft, path);
  } finally {
    await rm(draft, { force: true });
  }
}
