import { execFileSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

/** What admesh (Debian package `admesh`) says of a solid: numbers by their names. Throws when admesh is missing. */
export function admeshReport(bytes: Uint8Array): Record<string, number[]> {
  const folder = mkdtempSync(join(tmpdir(), 'disc-solid-'));
  try {
    const file = join(folder, 'disc.stl');
    writeFileSync(file, bytes);
    const text = execFileSync('admesh', [file], { encoding: 'utf8' });
    const rows = [...text.matchAll(/([A-Z][A-Za-z0-9 ]*?)\s*:\s*(-?[\d.]+)(?:\s+(-?[\d.]+))?/g)];
    return Object.fromEntries(rows.map(([, name, ...values]) => [name!, values.filter(Boolean).map(Number)]));
  } finally {
    rmSync(folder, { recursive: true });
  }
}

/** What admesh says of a solid that needs no repair. */
export const SOUND = {
  'Total disconnected facets': [0, 0],
  'Degenerate facets': [0],
  'Edges fixed': [0],
  'Facets removed': [0],
  'Facets added': [0],
  'Facets reversed': [0],
  'Backwards edges': [0],
  'Normals fixed': [0],
} as const;
