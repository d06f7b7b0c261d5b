import { VanewrightError } from '../../core/error/index.ts';

const FULL = new Set(['ENOSPC', 'EDQUOT', 'EFBIG']);

function causeOf(error: unknown): string {
  if (error instanceof Error && 'code' in error && typeof error.code === 'string') return error.code;
  return error instanceof Error ? error.message : String(error);
}

/** What a maker is told when the raw log cannot be written. */
export function logProblem(folder: string, error: unknown): VanewrightError {
  const cause = causeOf(error);
  if (FULL.has(cause)) {
    return new VanewrightError({
      code: 'log/disk-full',
      what: 'The disk is full: logging has stopped, and what came last waits in memory.',
      where: folder,
      got: cause,
      allowed: 'about 1.3 GB of free space for a year of lines each second, before compression',
      fix: 'Free some space; every line that was acknowledged is safe.',
    });
  }
  return new VanewrightError({
    code: 'log/not-writable',
    what: 'The raw log cannot be written.',
    where: folder,
    got: cause,
    allowed: 'a folder that you may write to',
    fix: 'Name a folder of your own with --store.',
  });
}

/** What a maker is told when another process writes this log. */
export function lockedProblem(folder: string, pid: number): VanewrightError {
  return new VanewrightError({
    code: 'log/in-use',
    what: 'Another vanewright is logging into this store.',
    where: folder,
    got: `process ${pid}`,
    allowed: 'one logger for a store on this disk',
    fix: `Stop the process ${pid}, ask it over its web address, or use a PostgreSQL store for several loggers.`,
  });
}
