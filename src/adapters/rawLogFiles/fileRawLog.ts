import { randomUUID } from 'node:crypto';
import { constants } from 'node:fs';
import { mkdir, open, readFile, type FileHandle } from 'node:fs/promises';
import { join } from 'node:path';
import {
  frameOf,
  scanFrames,
  type Damage,
  type NewRawEntry,
  type RawEntry,
} from '../../core/record/index.ts';
import type { RawDamage, RawLog } from '../../ports/index.ts';
import { lockFolder, type Unlock } from './folderLock.ts';
import { logProblem } from './logProblem.ts';
import {
  compressSegment,
  openPath,
  segmentBytes,
  segmentFiles,
  syncFolder,
  type SegmentFile,
} from './segmentFile.ts';

/** How a log is kept. */
export interface FileRawLogOptions {
  /** A segment is closed and compressed once it is longer. [byte] */
  readonly segmentBytes?: number;
}

const SEGMENT_BYTES = 16 * 1024 * 1024;
/** Entries appended at once are written together up to this. [byte] */
const WRITE_MOST = 4 * 1024 * 1024;

interface Waiting {
  readonly entries: readonly NewRawEntry[];
  readonly done: (firstSeq: number) => void;
  readonly failed: (error: unknown) => void;
}

/** A raw log in files of a folder, one segment open for writing. */
class FileRawLog implements RawLog {
  readonly damage: RawDamage[] = [];
  lastSeq = 0;
  name = '';
  readonly #folder: string;
  readonly #segmentBytes: number;
  readonly #unlock: Unlock;
  #file: FileHandle | null = null;
  #firstSeq = 1;
  /** Sound bytes of the open segment: the next entry goes there. [byte] */
  #length = 0;
  #waiting: Waiting[] = [];
  #writing: Promise<void> | null = null;
  #compressing: Promise<void> = Promise.resolve();

  constructor(folder: string, unlock: Unlock, options: FileRawLogOptions) {
    this.#folder = folder;
    this.#unlock = unlock;
    this.#segmentBytes = options.segmentBytes ?? SEGMENT_BYTES;
  }

  /** Finds the end of what is sound; segments that were left uncompressed are compressed behind the scenes. */
  async recover(): Promise<void> {
    this.name = await nameOf(this.#folder);
    const files = await segmentFiles(this.#folder);
    const last = files.at(-1);
    for (const file of files) {
      if (file.isCompressed || file === last) continue;
      this.#compress(file.firstSeq);
    }
    if (!last) return this.#openSegment(1, 0);
    const bytes = await segmentBytes(last);
    const { entries, damage, soundBytes } = scanFrames(bytes);
    this.#noteDamage(last, damage);
    this.lastSeq = entries.at(-1)?.seq ?? last.firstSeq - 1;
    // Bytes that cannot be read stay as they are for whoever wants to look: writing goes on in a new segment.
    if (last.isCompressed || damage.length > 0) return this.#openSegment(this.lastSeq + 1, 0, last);
    return this.#openSegment(last.firstSeq, soundBytes);
  }

  #noteDamage({ path }: SegmentFile, damage: readonly Damage[]): void {
    const segment = path.replace(/^.*[\\/]/, '').replace(/[.]gz$/, '');
    if (damage.length === 0 || this.damage.some((known) => known.segment === segment)) return;
    this.damage.push(...damage.map((found) => ({ ...found, segment })));
  }

  async #openSegment(firstSeq: number, length: number, before?: SegmentFile): Promise<void> {
    const path = openPath(this.#folder, firstSeq);
    // The segment before holds no sound entry at all: its bytes make room for those of the same number.
    const isReplaced = before?.firstSeq === firstSeq;
    const file = await open(
      path,
      constants.O_RDWR | constants.O_CREAT | (isReplaced ? constants.O_TRUNC : 0),
    );
    await file.truncate(length);
    await file.sync();
    this.#file = file;
    await syncFolder(this.#folder);
    this.#firstSeq = firstSeq;
    this.#length = length;
  }

  append(entries: readonly NewRawEntry[]): Promise<number> {
    return new Promise((done, failed) => {
      this.#waiting.push({ entries, done, failed });
      this.#writing ??= this.#writeAll();
    });
  }

  /** Everything that waits goes to the disk together, with one sync. */
  async #writeAll(): Promise<void> {
    // Appends asked for in the same turn of the loop share one sync.
    await Promise.resolve();
    while (this.#waiting.length > 0) {
      const batch = this.#takeBatch();
      try {
        await this.#write(batch);
      } catch (error) {
        for (const { failed } of batch) failed(logProblem(this.#folder, error));
      }
    }
    this.#writing = null;
  }

  #takeBatch(): Waiting[] {
    let bytes = 0;
    let count = 0;
    while (count < this.#waiting.length && bytes < WRITE_MOST) {
      for (const { payload } of this.#waiting[count]!.entries) bytes += payload.length;
      count++;
    }
    return this.#waiting.splice(0, count);
  }

  async #write(batch: readonly Waiting[]): Promise<void> {
    if (!this.#file) throw new Error('the log is closed');
    let seq = this.lastSeq;
    const frames: Uint8Array[] = [];
    const firsts = batch.map(({ entries }) => {
      const first = seq + 1;
      for (const entry of entries) {
        seq++;
        frames.push(frameOf({ ...entry, stream: entry.kind === 'begin' ? seq : entry.stream, seq }));
      }
      return first;
    });
    const bytes = Buffer.concat(frames);
    try {
      await this.#writeWhole(bytes);
      await this.#file.datasync();
    } catch (error) {
      // What was written of it is taken back, so that the next try begins at a sound end.
      await this.#file.truncate(this.#length).catch(() => {});
      throw error;
    }
    this.#length += bytes.length;
    this.lastSeq = seq;
    for (const [i, { done }] of batch.entries()) done(firsts[i]!);
    if (this.#length >= this.#segmentBytes) await this.#roll();
  }

  async #writeWhole(bytes: Uint8Array): Promise<void> {
    let written = 0;
    while (written < bytes.length) {
      const { bytesWritten } = await this.#file!.write(
        bytes,
        written,
        bytes.length - written,
        this.#length + written,
      );
      written += bytesWritten;
    }
  }

  /** Closes a full segment; when the disk has no room for the next, this one simply grows. */
  async #roll(): Promise<void> {
    const [full, closed] = [this.#file!, this.#firstSeq];
    try {
      await this.#openSegment(this.lastSeq + 1, 0);
    } catch {
      this.#file = full;
      return;
    }
    await full.close();
    this.#compress(closed);
  }

  #compress(firstSeq: number): void {
    // Only room is lost when this fails; the segment itself stays, and the next start tries again.
    this.#compressing = this.#compressing.then(() => compressSegment(this.#folder, firstSeq)).catch(() => {});
  }

  async *read(afterSeq: number): AsyncIterable<readonly RawEntry[]> {
    let next = afterSeq;
    for (;;) {
      const files = await segmentFiles(this.#folder);
      const at = files.findLastIndex((file) => file.firstSeq <= next + 1);
      const file = files[Math.max(0, at)];
      if (!file) return;
      const isOpen = file.firstSeq === this.#firstSeq;
      const whole = await segmentBytes(file).catch(() => null);
      if (whole === null) continue; // compressed between the look and the reading
      const { entries, damage } = scanFrames(isOpen ? whole.subarray(0, this.#length) : whole);
      this.#noteDamage(file, damage);
      const later = entries.filter(({ seq }) => seq > next);
      if (later.length > 0) yield later;
      next = Math.max(next, later.at(-1)?.seq ?? next);
      if (isOpen) return;
      const following = files[Math.max(0, at) + 1];
      if (!following) return;
      // A segment whose end is damaged may miss entries: reading goes on with the next one all the same.
      next = Math.max(next, following.firstSeq - 1);
    }
  }

  async close(): Promise<void> {
    await this.#writing;
    await this.#compressing;
    await this.#file?.close();
    this.#file = null;
    await this.#unlock();
  }
}

/** Name of the log of a folder, drawn when the folder is new. */
async function nameOf(folder: string): Promise<string> {
  const path = join(folder, 'name');
  const known = await readFile(path, 'utf8').catch(() => '');
  if (/^[0-9a-f-]{36}$/.test(known)) return known;
  const name = randomUUID();
  const file = await open(path, 'w');
  await file.writeFile(name);
  await file.sync();
  await file.close();
  return name;
}

/**
 * Opens the raw log of a folder, making the folder when it is missing; one process at a time.
 *
 * @throws `log/in-use`, `log/disk-full`, `log/not-writable`
 */
export async function fileRawLog(folder: string, options: FileRawLogOptions = {}): Promise<RawLog> {
  let unlock: Unlock | null = null;
  try {
    await mkdir(folder, { recursive: true });
    unlock = await lockFolder(folder);
    const log = new FileRawLog(folder, unlock, options);
    await log.recover();
    return log;
  } catch (error) {
    await unlock?.();
    if (error instanceof Error && error.name === 'VanewrightError') throw error;
    throw logProblem(folder, error);
  }
}
