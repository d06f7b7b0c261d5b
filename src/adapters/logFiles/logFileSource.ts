import { createReadStream } from 'node:fs';
import { readdir, stat } from 'node:fs/promises';
import { basename, join, relative } from 'node:path';
import { VanewrightError } from '../../core/error/index.ts';
import type { ReadingRule } from '../../core/record/index.ts';
import type { LineSource } from '../../ports/index.ts';

/** Whose lines they are, and what the maker says about them. */
export interface LogFileOptions {
  readonly station: string;
  readonly rule?: Partial<ReadingRule>;
}

const PIECE = 256 * 1024;

interface Found {
  readonly path: string;
  readonly name: string;
  readonly bytes: number;
}

/** Files of a folder and those below it, in the order of their names. */
async function filesOf(path: string): Promise<Found[]> {
  const whole = await stat(path).catch(() => null);
  if (!whole) {
    throw new VanewrightError({
      code: 'log/source-not-found',
      what: 'There is nothing to read at that path.',
      where: path,
      got: 'no file and no folder',
      allowed: 'a log file, a folder of them, - for standard input, a serial port, or mqtt://…',
      fix: 'Check the spelling of --from.',
    });
  }
  if (!whole.isDirectory()) return [{ path, name: basename(path), bytes: whole.size }];
  const names = await readdir(path, { recursive: true });
  const all = await Promise.all(
    names.sort().map(async (name) => {
      const at = join(path, name);
      const found = await stat(at);
      return found.isFile() ? [{ path: at, name: relative(path, at), bytes: found.size }] : [];
    }),
  );
  return all.flat();
}

/**
 * Old logs: a file, or every file of a folder, each a source of its own.
 *
 * @param path - File or folder.
 */
export function logFileSource(path: string, { station, rule }: LogFileOptions): LineSource {
  let isClosed = false;
  return {
    name: path,
    async run(take) {
      const files = await filesOf(path);
      const ofBytes = files.reduce((sum, { bytes }) => sum + bytes, 0);
      let done = 0;
      for (const file of files) {
        const begin = { station, source: 'file', name: file.name, ...(rule ? { rule } : {}) } as const;
        const pieces = createReadStream(file.path, { highWaterMark: PIECE });
        for await (const bytes of pieces as AsyncIterable<Uint8Array>) {
          if (isClosed) break;
          done += bytes.length;
          await take({ begin, bytes, arrivedMs: null, isEnd: false, done: { bytes: done, ofBytes } });
        }
        const empty = new Uint8Array(0);
        await take({ begin, bytes: empty, arrivedMs: null, isEnd: true, done: { bytes: done, ofBytes } });
        if (isClosed) return;
      }
    },
    async close() {
      isClosed = true;
    },
  };
}
