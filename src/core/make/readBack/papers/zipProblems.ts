import { sha256 } from '@noble/hashes/sha2.js';
import { bytesToHex } from '@noble/hashes/utils.js';
import { strFromU8, strToU8 } from 'fflate';
import type { Problem } from '../../../error/index.ts';
import type { MadeFile } from '../../madeFile.ts';
import { disagreement } from '../disagreement.ts';
import { readZip } from './readZip.ts';

function areEqual(a: Uint8Array, b: Uint8Array): boolean {
  return a.length === b.length && a.every((byte, i) => byte === b[i]);
}

/**
 * What a zip holds otherwise than it should: the files beside it, byte by byte, and a list of their checksums.
 *
 * @param zip - The zip.
 * @param files - The files it was made of.
 */
export function zipProblems(zip: MadeFile, files: readonly MadeFile[]): Problem[] {
  const wrong = (where: string, got: string, allowed: string): Problem =>
    disagreement(`${zip.path} › ${where}`, 'A zip was read back and does not hold its files.', got, allowed);
  if (typeof zip.content === 'string') return [wrong('bytes', 'text', 'a zip')];
  const entries = readZip(zip.content);
  const held = new Map(entries.map((entry) => [entry.path, entry]));
  const sums = strFromU8(held.get('SHA256SUMS')?.bytes ?? new Uint8Array())
    .split('\n')
    .filter(Boolean)
    .map((line) => [line.slice(66), line.slice(0, 64)] as const);
  const sumOf = new Map(sums);
  const broken = entries
    .filter(({ isWhole }) => !isWhole)
    .map(({ path }) => wrong(path, 'other bytes than its check value says', 'whole bytes'));
  const differing = files.flatMap(({ path, content }): Problem[] => {
    const bytes = typeof content === 'string' ? strToU8(content) : content;
    const entry = held.get(path);
    if (!entry) return [wrong(path, 'no such file', 'the file')];
    if (!areEqual(entry.bytes, bytes)) return [wrong(path, 'other bytes', 'the bytes of the file')];
    const sum = bytesToHex(sha256(entry.bytes));
    return sumOf.get(path) === sum
      ? []
      : [wrong(`SHA256SUMS › ${path}`, sumOf.get(path) ?? 'no checksum', sum)];
  });
  const extra = [...held.keys()].filter(
    (path) => path !== 'SHA256SUMS' && !files.some((file) => file.path === path),
  );
  return [...broken, ...differing, ...extra.map((path) => wrong(path, 'a file too many', 'no such file'))];
}
