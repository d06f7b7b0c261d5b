import { open } from 'node:fs/promises';
import { VanewrightError } from '../../core/error/index.ts';
import type { InstrumentFiles } from '../../ports/index.ts';
import { readProblem } from './fileProblem.ts';

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

/** Instrument files on this machine's disk. */
export const nodeInstrumentFiles: InstrumentFiles = {
  async readText(path, mostBytes) {
    let bytes: Buffer;
    try {
      bytes = await readAtMost(path, mostBytes);
    } catch (error) {
      throw readProblem(path, error);
    }
    if (bytes.length > mostBytes) {
      throw new VanewrightError({
        code: 'files/too-large',
        what: 'The file is far larger than an instrument file can be.',
        where: path,
        got: `more than ${mostBytes} bytes`,
        allowed: `${mostBytes} bytes or fewer`,
        fix: 'Check that the path names the instrument file and not a log or a picture.',
      });
    }
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
  },
};
