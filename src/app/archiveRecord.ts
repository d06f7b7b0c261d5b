import { VanewrightError } from '../core/error/index.ts';
import {
  archiveDescriptor,
  csvHeading,
  csvText,
  ledgerCsv,
  type ArchivedFile,
} from '../core/record/index.ts';
import type { ArchiveFolder, SampleStore, SampleWindow, StationSpan } from '../ports/index.ts';

/** What to archive, and how. */
export interface ArchiveRequest {
  readonly format: 'parquet' | 'csv';
  /** Included; `null` for the beginning. [ms UTC] */
  readonly sinceMs: number | null;
  /** Not included; `null` for the end. [ms UTC] */
  readonly untilMs: number | null;
}

/** What was written. */
export interface Archived {
  readonly files: readonly ArchivedFile[];
  /** [-] */
  readonly rows: number;
}

export interface Month {
  readonly name: string;
  readonly fromMs: number;
  readonly untilMs: number;
}

/** Months of UTC that a span touches. */
export function monthsOf(fromMs: number, toMs: number): Month[] {
  const months: Month[] = [];
  const first = new Date(fromMs);
  for (let m = first.getUTCFullYear() * 12 + first.getUTCMonth(); ; m++) {
    const start = Date.UTC(Math.floor(m / 12), m % 12);
    if (start > toMs) return months;
    const name = `${String(Math.floor(m / 12)).padStart(4, '0')}-${String((m % 12) + 1).padStart(2, '0')}`;
    months.push({ name, fromMs: start, untilMs: Date.UTC(Math.floor(m / 12), (m % 12) + 1) });
  }
}

/** Folder of a station: `station=` and its name, escaped as web addresses are, so that no name leaves the folder. */
export function folderOf(station: string): string {
  return `station=${encodeURIComponent(station).replaceAll('.', '%2E')}`;
}

async function* csvOf(
  store: SampleStore,
  window: SampleWindow,
  count: (rows: number) => void,
): AsyncIterable<string> {
  yield csvHeading();
  for await (const samples of store.samples(window)) {
    count(samples.length);
    yield csvText(samples);
  }
}

async function* ledgerOf(store: SampleStore): AsyncIterable<string> {
  yield ledgerCsv([], true);
  for await (const rows of store.ledger()) yield ledgerCsv(rows, false);
}

async function* once(text: string): AsyncIterable<string> {
  yield text;
}

async function archiveStation(
  { station, firstMs, lastMs }: StationSpan,
  store: SampleStore,
  folder: ArchiveFolder,
  { format, sinceMs, untilMs }: ArchiveRequest,
): Promise<ArchivedFile[]> {
  const from = Math.max(firstMs, sinceMs ?? firstMs);
  const to = Math.min(lastMs, (untilMs ?? Infinity) - 1);
  const files: ArchivedFile[] = [];
  for (const month of to < from ? [] : monthsOf(from, to)) {
    const window = {
      station,
      fromMs: Math.max(month.fromMs, sinceMs ?? month.fromMs),
      untilMs: Math.min(month.untilMs, untilMs ?? month.untilMs),
    };
    const path = `samples/${folderOf(station)}/month=${month.name}/samples.${format}`;
    let rows = 0;
    if (format === 'parquet') rows = await folder.parquet(path, store, window);
    else
      await folder.text(
        path,
        csvOf(store, window, (more) => (rows += more)),
      );
    files.push({ path, station, month: month.name, rows });
  }
  return files;
}

/**
 * Archives a record: samples by station and month, the repair ledger, and a descriptor of columns and units.
 *
 * @throws `log/nothing-to-archive`, and what store and folder say.
 */
export async function archiveRecord(
  store: SampleStore,
  folder: ArchiveFolder,
  request: ArchiveRequest,
): Promise<Archived> {
  const files: ArchivedFile[] = [];
  for (const span of await store.stations())
    files.push(...(await archiveStation(span, store, folder, request)));
  const rows = files.reduce((sum, file) => sum + file.rows, 0);
  if (rows === 0) {
    throw new VanewrightError({
      code: 'log/nothing-to-archive',
      what: 'The store holds no sample of that time.',
      where: '--store',
      got: '0 samples',
      allowed: 'a store with samples between --since and --until',
      fix: 'Leave --since and --until out, or check the store with: vanewright log FILE --store STORE',
    });
  }
  await folder.text('ledger.csv', ledgerOf(store));
  await folder.text('datapackage.json', once(archiveDescriptor(files, request.format)));
  return { files, rows };
}
