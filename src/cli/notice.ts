import { randomUUID } from 'node:crypto';
import { readFile, rename, rm, writeFile } from 'node:fs/promises';
import { join } from 'node:path';

/** A note beside a store in a file: which process holds it, and where that process can be asked. */
export interface Notice {
  put(url: string): Promise<void>;
  takeAway(): Promise<void>;
}

const NAME = 'serving.json';

/** The notice of a store's folder. */
export function noticeIn(folder: string): Notice {
  const path = join(folder, NAME);
  return {
    async put(url) {
      const draft = `${path}.${randomUUID()}`;
      await writeFile(draft, `${JSON.stringify({ url, process: process.pid })}\n`);
      await rename(draft, path);
    },
    takeAway: () => rm(path, { force: true }),
  };
}

function isRunning(id: number): boolean {
  try {
    return process.kill(id, 0);
  } catch (error) {
    // Someone else's process: it runs, and may not be signalled.
    return error instanceof Error && 'code' in error && error.code === 'EPERM';
  }
}

/** Where the process that holds a store can be asked; `null` when none does, whatever a crash has left behind. */
export async function noticeOf(folder: string): Promise<string | null> {
  const text = await readFile(join(folder, NAME), 'utf8').catch(() => null);
  if (text === null) return null;
  try {
    const { url, process: id } = JSON.parse(text) as { url?: unknown; process?: unknown };
    const isOurs = typeof url === 'string' && /^http:\/\/127\.0\.0\.1:\d+$/.test(url);
    return isOurs && typeof id === 'number' && isRunning(id) ? url : null;
  } catch {
    return null;
  }
}
