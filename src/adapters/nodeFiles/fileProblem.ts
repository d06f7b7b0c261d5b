import { VanewrightError, type Problem } from '../../core/error/index.ts';

/** Code of a system error such as `ENOSPC`, or the text of anything else that was thrown. */
function causeOf(error: unknown): string {
  if (error instanceof Error && 'code' in error && typeof error.code === 'string') return error.code;
  return error instanceof Error ? error.message : String(error);
}

type Words = Pick<Problem, 'code' | 'what' | 'got' | 'allowed' | 'fix'>;

const full: Words = {
  code: 'files/disk-full',
  what: 'There is no room left for the files; nothing was changed.',
  got: 'a full disk, or the end of your share of it',
  allowed: 'a few megabytes of free space',
  fix: 'Free some space, or name a folder on another disk.',
};

const forbidden: Words = {
  code: 'files/not-writable',
  what: 'The folder may not be written to; nothing was changed.',
  got: 'no permission to write there',
  allowed: 'a folder that you may write to',
  fix: 'Name a folder of your own.',
};

const blocked: Words = {
  code: 'files/not-a-folder',
  what: 'A file stands in the way of the folder; nothing was changed.',
  got: 'something that is not a folder',
  allowed: 'a folder, or a path where nothing is yet',
  fix: 'Name another folder.',
};

const nowhere: Words = {
  code: 'files/not-writable',
  what: 'No file can be put there; nothing was changed.',
  got: 'a link that leads nowhere, or a place of the system that holds no files',
  allowed: 'a folder that you may write to',
  fix: 'Name a folder of your own.',
};

const tooLong: Words = {
  code: 'files/not-writable',
  what: 'A name in the path is longer than this disk can hold; nothing was changed.',
  got: 'a name that is too long',
  allowed: 'names of up to 255 bytes',
  fix: 'Name a folder with a shorter path.',
};

/** What each cause of the system means to a maker. */
const writeCauses: Readonly<Record<string, Words>> = {
  ENOSPC: full,
  EDQUOT: full,
  EFBIG: full,
  EACCES: forbidden,
  EPERM: forbidden,
  EROFS: forbidden,
  ENOTDIR: blocked,
  EEXIST: blocked,
  ELOOP: blocked,
  ENOENT: nowhere,
  ENAMETOOLONG: tooLong,
};

/** What a maker is told when a result could not be written. */
export function writeProblem(folder: string, error: unknown): VanewrightError {
  const cause = causeOf(error);
  const words = writeCauses[cause] ?? {
    ...forbidden,
    what: 'The files could not be written; nothing was changed.',
    got: cause,
  };
  return new VanewrightError({ where: folder, ...words });
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
      allowed: 'the path of a file',
      fix: 'Check the spelling, or begin an instrument file with: vanewright new my-vane',
    });
  }
  const isFolder = cause === 'EISDIR';
  return new VanewrightError({
    code: 'files/not-readable',
    what: 'The file could not be read.',
    where: path,
    got: isFolder ? 'a folder' : cause,
    allowed: 'a text file that you may read',
    fix: isFolder ? `Name the file inside, such as ${path}/instrument.yaml` : 'Check who owns the file.',
  });
}
