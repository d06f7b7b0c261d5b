import { readdir, stat } from 'node:fs/promises';
import { join } from 'node:path';
import type { ListedFile } from '../../ports/index.ts';
import { isOfKind } from './projectPath.ts';

/** Folders below each other that are looked into. [-] */
const DEEPEST = 4;
/** Files in a list. [-] */
const LISTED_MOST = 500;
/** Entries looked at, so that a list from a whole home folder comes soon. [-] */
const LOOKED_MOST = 20_000;

const isPassedOver = (name: string): boolean => name.startsWith('.') || name === 'node_modules';

/** Files of a project below a folder, links left out; nearest ones first. */
export async function projectFiles(
  root: string,
): Promise<{ readonly files: readonly ListedFile[]; readonly isWhole: boolean }> {
  const files: ListedFile[] = [];
  const folders = [{ path: '', depth: 0 }];
  let looked = 0;
  for (let next = folders.shift(); next; next = folders.shift()) {
    const entries = await readdir(join(root, next.path), { withFileTypes: true }).catch(() => []);
    for (const entry of entries.sort((a, b) => (a.name < b.name ? -1 : 1))) {
      if (isPassedOver(entry.name)) continue;
      if (++looked > LOOKED_MOST || files.length === LISTED_MOST) return { files, isWhole: false };
      const path = next.path === '' ? entry.name : `${next.path}/${entry.name}`;
      if (entry.isDirectory() && next.depth < DEEPEST) folders.push({ path, depth: next.depth + 1 });
      if (!entry.isFile() || !isOfKind(entry.name)) continue;
      const found = await stat(join(root, path)).catch(() => null);
      if (found) files.push({ path, bytes: found.size, changedMs: Math.round(found.mtimeMs) });
    }
  }
  return { files, isWhole: true };
}
