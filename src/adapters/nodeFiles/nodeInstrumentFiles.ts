import { open, realpath, rename, rm, stat, writeFile } from 'node:fs/promises';
import { basename, dirname, join } from 'node:path';
import { VanewrightError } from '../../core/error/index.ts';
import type { InstrumentFiles } from '../../ports/index.ts';
import { readProblem, writeProblem } from './fileProblem.ts';

/** Reads at most one byte more than allowed, so that a file without end cannot fill the memory. */
async function readAtMost(path: string, mostBytes: number): Promise<Buffer> {
  const file = await open(path, 'r');
  try {
    const buffer = Buffer.alloc(mostBytes + 1);
    let filled = 0;
    while (filled < buffer.length) {
      const { bytesRead } = await file.read(buffer, filled, buffer.length - filled, null);
      if (bytesRead === 0) break;
      filled += bytesRead;
    }
    return buffer.subarray(0, filled);
  } finally {
    await file.close();
  }
}

/** A file that may be no longer than `mostBytes`; what is, is not what the maker means. */
async function wholeFile(path: string, mostBytes: number): Promise<Buffer> {
  const bytes = await readAtMost(path, mostBytes).catch((error: unknown) => {
    throw readProblem(path, error);
  });
  if (bytes.length <= mostBytes) return bytes;
  throw new VanewrightError({
    code: 'files/too-large',
    what: 'The file is far larger than such a file can be.',
    where: path,
    got: `more than ${mostBytes} bytes`,
    allowed: `${mostBytes} bytes or fewer`,
    fix: 'Check that the path names the right file.',
  });
}

function asText(path: string, bytes: Buffer): string {
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch {
    throw new VanewrightError({
      code: 'files/not-text',
      what: 'The file is not UTF-8 text.',
      where: path,
      got: 'bytes that are not UTF-8',
      allowed: 'a text file in UTF-8',
      fix: 'Save it again from your editor with the encoding UTF-8.',
    });
  }
}

/** Writes beside the file, then renames: the name always leads to a whole text. */
async function replaceWhole(path: string, text: string): Promise<void> {
  const goal = await realpath(path);
  const draft = join(dirname(goal), `.${basename(goal)}-${process.pid}`);
  try {
    await writeFile(draft, text, { flush: true, mode: (await stat(goal)).mode });
    await rename(draft, goal);
  } finally {
    await rm(draft, { force: true });
  }
}

/** Instrument files on this machine's disk. */
export const nodeInstrumentFiles: InstrumentFiles = {
  readText: async (path, mostBytes) => asText(path, await wholeFile(path, mostBytes)),
  readBytes: wholeFile,
  async changedAt(path) {
    const { mtime } = await stat(path).catch((error: unknown) => {
      throw readProblem(path, error);
    });
    return mtime.toISOString();
  },
  async replaceText(path, text) {
    await replaceWhole(path, text).catch((error: unknown) => {
      throw writeProblem(path, error);
    });
  },
};
