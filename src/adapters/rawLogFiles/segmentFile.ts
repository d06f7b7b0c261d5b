import { createReadStream, createWriteStream } from 'node:fs';
import { open, readdir, readFile, rename, rm, stat } from 'node:fs/promises';
import { join } from 'node:path';
import { pipeline } from 'node:stream/promises';
import { promisify } from 'node:util';
import { createGzip, gunzip } from 'node:zlib';

const unzip = promisify(gunzip);

/** A segment on the disk. */
export interface SegmentFile {
  /** Sequence number of its first entry, which is its name. [-] */
  readonly firstSeq: number;
  readonly path: string;
  readonly isCompressed: boolean;
}

const NAME = /^(\d{16})[.]raw([.]gz)?$/;
const nameOf = (firstSeq: number): string => `${String(firstSeq).padStart(16, '0')}.raw`;

/** Path of a segment that is being written. */
export function openPath(folder: string, firstSeq: number): string {
  return join(folder, nameOf(firstSeq));
}

/** Segments of a folder in order; a compressed one beside its uncompressed self is not yet to be trusted. */
export async function segmentFiles(folder: string): Promise<SegmentFile[]> {
  const found = new Map<number, SegmentFile>();
  for (const name of (await readdir(folder)).sort()) {
    const parts = NAME.exec(name);
    if (!parts) continue;
    const firstSeq = Number(parts[1]);
    const file = { firstSeq, path: join(folder, name), isCompressed: parts[2] !== undefined };
    if (!found.has(firstSeq) || !file.isCompressed) found.set(firstSeq, file);
  }
  return [...found.values()].sort((a, b) => a.firstSeq - b.firstSeq);
}

/** Bytes of a segment; a compressed one whose end is gone gives nothing rather than failing. */
export async function segmentBytes({ path, isCompressed }: SegmentFile): Promise<Uint8Array> {
  const bytes = await readFile(path);
  if (!isCompressed) return bytes;
  return unzip(bytes).catch(() => new Uint8Array(0));
}

/** Makes the names of a folder durable, where the system can. */
export async function syncFolder(folder: string): Promise<void> {
  const handle = await open(folder, 'r');
  try {
    await handle.sync();
  } finally {
    await handle.close();
  }
}

/** Puts a compressed copy in the place of a closed segment; at every moment one of the two is whole. */
export async function compressSegment(folder: string, firstSeq: number): Promise<void> {
  const path = openPath(folder, firstSeq);
  const goal = `${path}.gz`;
  const draft = `${goal}.part`;
  await pipeline(createReadStream(path), createGzip({ level: 6 }), createWriteStream(draft));
  const handle = await open(draft, 'r+');
  try {
    await handle.sync();
  } finally {
    await handle.close();
  }
  const { size } = await stat(path);
  const back = await unzip(await readFile(draft));
  if (back.length !== size) throw new Error(`The compressed copy of ${path} differs.`);
  await rename(draft, goal);
  await syncFolder(folder);
  await rm(path);
}
