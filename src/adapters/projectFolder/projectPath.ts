import { VanewrightError } from '../../core/error/index.ts';

/** Longest path below the folder. [chars] */
const LONGEST = 240;
/** Kinds of files that belong to a project: text that people and programs exchange, and nothing that runs. */
export const FILE_KINDS = ['yaml', 'yml', 'json', 'csv', 'tsv', 'txt', 'log', 'dat', 'md'];

/** Signs that no name may have: control signs, and those that are more than a name on some system. */
const FORBIDDEN = /[\x00-\x1f\x7f-\x9f\\:*?"<>|]/;
/** Names that are devices on some systems, whatever stands behind their point. */
const DEVICE = /^(con|prn|aux|nul|com\d|lpt\d|conin\$|conout\$)(\.|$)/i;

function refusal(path: string, what: string): VanewrightError {
  return new VanewrightError({
    code: 'open/outside-project',
    what,
    where: 'path',
    got: JSON.stringify(path.slice(0, 80)),
    allowed: 'a path below the folder of the project, such as recordings/turn-1.csv',
    fix: 'Name a file as it stands in the list of files.',
  });
}

/** A path that a link leads out of the folder. */
export function leadsOut(path: string): VanewrightError {
  return refusal(path, 'The path leads out of the folder of the project.');
}

function isPlainName(name: string): boolean {
  if (name === '' || name.startsWith('.') || /[. ]$/.test(name)) return false;
  return !FORBIDDEN.test(name) && !DEVICE.test(name);
}

/**
 * The names of a path that stays below the folder on every system.
 *
 * @throws `open/outside-project` for anything else, and `open/file-kind`.
 */
export function projectPath(path: string): readonly string[] {
  const names = path.split('/');
  if (path.length > LONGEST || !names.every(isPlainName))
    throw refusal(path, 'That is no path below the folder of the project.');
  if (isOfKind(path)) return names;
  throw new VanewrightError({
    code: 'open/file-kind',
    what: 'Files of that kind are no part of a project.',
    where: 'path',
    got: JSON.stringify(path.slice(-80)),
    allowed: FILE_KINDS.map((kind) => `.${kind}`).join(' '),
    fix: 'Give the file a name such as turn-1.csv.',
  });
}

/** Whether a name ends like a file of a project. */
export function isOfKind(name: string): boolean {
  return FILE_KINDS.includes(/\.([a-z]+)$/.exec(name.toLowerCase())?.[1] ?? '');
}
