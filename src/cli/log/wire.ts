import { randomUUID } from 'node:crypto';
import { copyFile, mkdir, readFile, rename, stat, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import type { ReadingChoices } from '../../app/logChoices.ts';
import { VanewrightError } from '../../core/error/index.ts';
import type { ReadingRule } from '../../core/record/index.ts';
import { noticeIn, type Notice } from '../notice.ts';
import type { ArchiveFolder, LineSource, RawLog, SampleStore, SharedFeeds } from '../../ports/index.ts';

/** Where samples and raw bytes rest, and how they were last read. */
export interface OpenStore {
  readonly log: RawLog;
  readonly store: SampleStore;
  readonly choices: ReadingChoices;
  /** Damaged files that were put aside; what they held has been read again. */
  readonly putAside: readonly string[];
  keepChoices(choices: ReadingChoices): Promise<void>;
  /** Where programs can ask the process that holds the store; `null` for a store that many may open. */
  readonly notice: Notice | null;
  close(): Promise<void>;
}

/** Where the raw log lies: below the store, or where the maker says for a store on a server. */
export interface StoreWords {
  readonly store: string;
  readonly raw: string | null;
}

const CHOICES = 'reading.json';
export const isServer = (store: string): boolean => /^postgres(ql)?:\/\//.test(store);

export const isBroker = (from: string): boolean => /^mqtts?:\/\//.test(from);

async function choicesOf(path: string): Promise<ReadingChoices> {
  const text = await readFile(path, 'utf8').catch(() => '{}');
  try {
    return JSON.parse(text) as ReadingChoices;
  } catch {
    throw new VanewrightError({
      code: 'log/choices',
      what: 'The choices beside the store cannot be read.',
      where: path,
      got: text.slice(0, 40),
      allowed: 'JSON as vanewright wrote it',
      fix: 'Remove the file and give the choices again, with --rebuild.',
    });
  }
}

/**
 * Opens a store; the packages behind it are loaded only now, so that other commands start fast.
 *
 * @throws `log/in-use`, `store/in-use`, `store/not-writable` and their like.
 */
export async function openStore({ store, raw }: StoreWords): Promise<OpenStore> {
  const folder = isServer(store) ? (raw ?? 'vanewright-raw') : store;
  const { fileRawLog } = await import('../../adapters/rawLogFiles/index.ts');
  const log = await fileRawLog(join(folder, 'raw'));
  try {
    const opened = await openSamples(store);
    const path = join(folder, CHOICES);
    return {
      log,
      store: opened.store,
      putAside: opened.putAside,
      choices: await choicesOf(path),
      notice: isServer(store) ? null : noticeIn(folder),
      async keepChoices(choices) {
        await mkdir(folder, { recursive: true });
        const draft = `${path}.${randomUUID()}`;
        await writeFile(draft, `${JSON.stringify(choices, null, 2)}\n`);
        await rename(draft, path);
      },
      async close() {
        await opened.store.close();
        await log.close();
      },
    };
  } catch (error) {
    await log.close();
    throw error;
  }
}

async function openSamples(where: string): Promise<{ store: SampleStore; putAside: readonly string[] }> {
  if (isServer(where)) {
    const { postgresSampleStore } = await import('../../adapters/postgres/index.ts');
    return { store: await postgresSampleStore(where), putAside: [] };
  }
  const store = await openEmbedded(where);
  return { store, putAside: store.putAside };
}

/** A workbench that looks into the store lets go of it after a moment; so long it is tried again. [ms] */
const AGAIN_MS = 400;
const AGAIN_MOST = 25;

async function openEmbedded(where: string, again = AGAIN_MOST) {
  const { duckdbSampleStore } = await import('../../adapters/duckdb/index.ts');
  try {
    return await duckdbSampleStore(join(where, 'record.duckdb'));
  } catch (error) {
    const isHeld = error instanceof VanewrightError && error.problems[0]!.code === 'store/in-use';
    if (!isHeld || again === 0) throw error;
    await new Promise((done) => setTimeout(done, AGAIN_MS));
    return openEmbedded(where, again - 1);
  }
}

/** What workers share that keep nothing themselves. */
export async function openShared(url: string): Promise<{ store: SampleStore; feeds: SharedFeeds }> {
  const { postgresFeeds, postgresSampleStore } = await import('../../adapters/postgres/index.ts');
  const store = await postgresSampleStore(url);
  return { store, feeds: await postgresFeeds(url) };
}

/** A folder for an archive. */
export async function openArchive(folder: string): Promise<ArchiveFolder> {
  const { duckdbArchive } = await import('../../adapters/duckdb/index.ts');
  return duckdbArchive(folder);
}

/** Copies the raw log of a store or of a backup, with the choices beside it; everything else is made from these. */
export async function copyStore(
  from: string,
  to: string,
): Promise<{ segments: number; entries: number; bytes: number }> {
  const { copyRawLog } = await import('../../adapters/rawLogFiles/index.ts');
  const copied = await copyRawLog(join(from, 'raw'), join(to, 'raw'));
  await copyFile(join(from, CHOICES), join(to, CHOICES)).catch((error: unknown) => {
    if (!(error instanceof Error && 'code' in error && error.code === 'ENOENT')) throw error;
  });
  return copied;
}

/** What a source is and whose lines it gives. */
export interface SourceWords {
  readonly from: string;
  readonly station: string;
  /** Speed of a serial port. [bit/s] */
  readonly baud: number;
  readonly rule: Partial<ReadingRule>;
  /** The bytes of standard input are those of an old log. */
  readonly isOld: boolean;
  /** By which a broker knows this logger again; those of one group share what it sends, `null` for one alone. */
  readonly client: { readonly id: string; readonly group: string | null };
}

/** The source that a maker means: `-`, a path, a serial port or a broker. */
export async function openSource(words: SourceWords): Promise<LineSource> {
  const { from, station, baud, rule, isOld, client } = words;
  const { logFileSource, machineClock, standardInput } = await import('../../adapters/logFiles/index.ts');
  if (from === '-') return standardInput({ station, rule }, machineClock, isOld);
  if (isBroker(from)) {
    const { mqttSource } = await import('../../adapters/mqtt/index.ts');
    return mqttSource({ url: from, station, rule, group: client.group, clientId: client.id }, machineClock);
  }
  const path = from.replace(/^serial:/, '');
  const isDevice = (await stat(path).catch(() => null))?.isCharacterDevice() ?? false;
  if (!isDevice && path === from) return logFileSource(path, { station, rule });
  const { serialSource } = await import('../../adapters/serial/index.ts');
  return serialSource({ path, baud, station, rule }, machineClock);
}

export { machineClock } from '../../adapters/logFiles/index.ts';
