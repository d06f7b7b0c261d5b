import { readdirSync, readFileSync } from 'node:fs';
import { join, relative } from 'node:path';
import { fileURLToPath } from 'node:url';

/** Root of the repository. */
export const ROOT = fileURLToPath(new URL('../../', import.meta.url));

/** Files below a folder of the repository whose path fits, as paths from the root, in order. */
export function filesBelow(folder: string, fits: RegExp): string[] {
  const found = readdirSync(join(ROOT, folder), { recursive: true, withFileTypes: true });
  return found
    .filter((entry) => entry.isFile())
    .map((entry) => relative(ROOT, join(entry.parentPath, entry.name)).replaceAll('\\', '/'))
    .filter((path) => fits.test(path))
    .sort();
}

/** Text of a file of the repository. */
export function textOf(path: string): string {
  return readFileSync(join(ROOT, path), 'utf8');
}

/** Source that ships: no tests. */
export function sourcePaths(folder = 'src'): string[] {
  return filesBelow(folder, /[.]ts$/).filter((path) => !path.endsWith('.test.ts'));
}
