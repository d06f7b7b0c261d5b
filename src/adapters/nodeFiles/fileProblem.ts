import { VanewrightError } from '../../core/error/index.ts';

/** Code of a system error such as `ENOSPC`, or the text of anything else that was thrown. */
export function causeOf(error: unknown): string {
  if (error instanceof Error && 'code' in error && typeof error.code === 'string') return error.code;
  return error instanceof Error ? error.message : String(error);
}

const FULL = new Set(['ENOSPC', 'EDQUOT', 'EFBIG']);

/** What a maker is told when a result could not be written. */
export function writeProblem(folder: string, error: unknown): VanewrightError {
  const cause = causeOf(error);
  if (FULL.has(cause)) {
    return new VanewrightError({
      code: 'files/disk-full',
      what: 'There is no room left for the files; nothing was written.',
      where: folder,
      got: cause,
      allowed: 'a few megabytes of free space',
      fix: 'Free some space, or name another folder with --out.',
    });
  }
  return new VanewrightError({
    code: 'files/not-writable',
    what: 'The files could not be written; nothing was changed.',
    where: folder,
    got: cause,
    allowed: 'a folder that you may write to',
    fix: 'Name a folder of your own with --out.',
  });
}

/** What a maker is told when a file could not be read. */
export function readProblem(path: string, error: unknown): VanewrightError {
  const cause = causeOf(error);
  if (cause === 'ENOENT' || cause === 'ENOTDIR') {
    return new VanewrightError({
      code: 'files/not-found',
      what: 'There is no such file.',
      where: path,
      got: 'nothing at that path',
      allowed: 'the path of an instrument file',
      fix: 'Check the spelling, or begin one with: vanewright new my-vane',
    });
  }
  return new VanewrightError({
    code: 'files/not-readable',
    what: 'The file could not be read.',
    where: path,
    got: cause === 'EISDIR' ? 'a folder' : cause,
    allowed: 'a text file that you may read',
    fix:
      cause === 'EISDIR'
        ? `Name the file inside, such as ${path}/instrument.yaml`
        : 'Check who owns the file.',
  });
}
