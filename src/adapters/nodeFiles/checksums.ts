import { createHash } from 'node:crypto';
import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { VanewrightError } from '../../core/error/index.ts';
import type { OutputFile } from '../../ports/index.ts';

/** Name of the checksum list, in the format that the common `sha256sum -c` reads. */
export const CHECKSUMS = 'SHA256SUMS';

/** First line of a list of ours; the tools that check such lists pass over it. */
const SIGNATURE = '# Written by vanewright: the files it made here and may replace. Yours are not listed.';

/** Checksum of a file's content, in hexadecimal. */
export function sha256(content: string | Uint8Array): string {
  return createHash('sha256').update(content).digest('hex');
}

/** List of checksums by path, in order of the map. */
export function checksumList(checksums: ReadonlyMap<string, string>): OutputFile {
  const rows = [...checksums].map(([path, checksum]) => `${checksum}  ${path}\n`);
  return { path: CHECKSUMS, content: `${SIGNATURE}\n${rows.join('')}` };
}

/**
 * Path and checksum of every file an earlier run wrote; empty where there was none.
 *
 * @throws `files/foreign-checksums` when a list of someone else stands there: its files are not ours to judge.
 */
export async function earlierFiles(folder: string): Promise<Map<string, string>> {
  const path = join(folder, CHECKSUMS);
  const text = await readFile(path, 'utf8').catch(() => null);
  if (text === null) return new Map();
  if (!text.startsWith(`${SIGNATURE}\n`)) {
    throw new VanewrightError({
      code: 'files/foreign-checksums',
      what: 'The folder holds a list of checksums that vanewright did not write; nothing was changed.',
      where: path,
      got: 'a list without our first line',
      allowed: 'a folder without such a list, or one with ours',
      fix: 'Name another folder, or move that list away.',
    });
  }
  const rows = text.split('\n').map((line) => /^([0-9a-f]{64}) {2}([^/\\][^\\]*)$/.exec(line));
  const inside = rows.filter((row) => row !== null && !row[2]!.split('/').includes('..'));
  return new Map(inside.map((row) => [row![2]!, row![1]!]));
}
