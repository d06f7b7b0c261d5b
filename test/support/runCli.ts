import { spawnSync } from 'node:child_process';
import { mkdtempSync, readdirSync, rmSync, statSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, relative } from 'node:path';
import { ROOT } from './sourceFiles.ts';

/** How the real command ended and what it said. */
export interface Said {
  readonly exit: number | null;
  readonly out: string;
  readonly err: string;
}

/** Path of the command in this repository. */
export const COMMAND = join(ROOT, 'bin/vanewright.mjs');

/** Runs the built command as a shell would, from the root of the repository. */
export function vanewright(...words: string[]): Said {
  const { status, stdout, stderr } = spawnSync('node', [COMMAND, ...words], {
    cwd: ROOT,
    encoding: 'utf8',
    timeout: 120_000,
    killSignal: 'SIGKILL',
  });
  return { exit: status, out: stdout, err: stderr };
}

/** A folder of its own for one test; `end` takes it away. */
export function ownFolder(): { readonly path: string; end(): void } {
  const path = mkdtempSync(join(tmpdir(), 'vanewright-journey-'));
  return { path, end: () => rmSync(path, { recursive: true, force: true }) };
}

/** Every file below a folder, folders left out. */
export function filesIn(folder: string): string[] {
  const all = readdirSync(folder, { recursive: true }) as string[];
  return all
    .filter((path) => statSync(join(folder, path)).isFile())
    .map((path) => relative('', path))
    .sort();
}
