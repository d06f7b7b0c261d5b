import { open, readFile, rm } from 'node:fs/promises';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { lockedProblem } from './logProblem.ts';

/** Takes a lock off. */
export type Unlock = () => Promise<void>;

/** When a process began, so that a number used again is not mistaken for it; empty where the system does not tell. */
function startOf(pid: number): string {
  try {
    return (
      readFileSync(`/proc/${pid}/stat`, 'utf8')
        .replace(/^.*\) /s, '')
        .split(' ')[19] ?? ''
    );
  } catch {
    return '';
  }
}

function isAlive(pid: number): boolean {
  try {
    process.kill(pid, 0);
    return true;
  } catch (error) {
    return error instanceof Error && 'code' in error && error.code === 'EPERM';
  }
}

/** Process of a lock file that still runs, or `null`. */
async function holderOf(path: string): Promise<number | null> {
  const [pid, start] = (await readFile(path, 'utf8').catch(() => '')).split(' ');
  const holder = Number(pid);
  if (!Number.isInteger(holder) || holder <= 0 || !isAlive(holder)) return null;
  return startOf(holder) === start?.trim() ? holder : null;
}

/**
 * Makes this process the only one that writes to a folder; the lock of a process that died is taken over.
 *
 * @throws `log/in-use`
 */
export async function lockFolder(folder: string): Promise<Unlock> {
  const path = join(folder, 'lock');
  for (let attempt = 0; ; attempt++) {
    try {
      const file = await open(path, 'wx');
      await file.writeFile(`${process.pid} ${startOf(process.pid)}`);
      await file.close();
      return () => rm(path, { force: true });
    } catch (error) {
      if (!(error instanceof Error && 'code' in error && error.code === 'EEXIST') || attempt > 3) throw error;
      const holder = await holderOf(path);
      if (holder !== null) throw lockedProblem(folder, holder);
      await rm(path, { force: true });
    }
  }
}
