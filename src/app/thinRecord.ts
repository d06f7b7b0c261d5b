import { VanewrightError } from '../core/error/index.ts';
import { csvText10Min, type ArchivedFile } from '../core/record/index.ts';
import { PeriodStream, READ_HEADING, READ_SPEED, REPORTED_CALM_M_PER_S } from '../core/wind/index.ts';
import type {
  ArchiveFolder,
  ArchiveFigures,
  SampleStore,
  SampleWindow,
  StationSpan,
} from '../ports/index.ts';
import { folderOf, monthsOf } from './archiveRecord.ts';

/** What was moved out of a store. */
export interface Thinned {
  readonly files: readonly ArchivedFile[];
  /** Tables of 10-minute means, one a station. */
  readonly means: readonly string[];
  /** [-] */
  readonly rows: number;
  /** Samples up to here were moved, this instant included. [ms UTC] */
  readonly untilMs: number;
}

const DAY_MS = 86_400_000;
/** Sums of the same numbers in another order differ by less than this share. [-] */
const SUM_SHARE = 1e-11;

/** First instant of the month that lies wholly within the days to be kept. [ms UTC] */
function monthBefore(nowMs: number, keepDays: number): number {
  const at = new Date(nowMs - keepDays * DAY_MS);
  return Date.UTC(at.getUTCFullYear(), at.getUTCMonth());
}

/** Count and sums of what the store has of a window. */
async function storeFigures(store: SampleStore, window: SampleWindow): Promise<ArchiveFigures> {
  let [rows, headings, speeds, headingSum, speedSum] = [0, 0, 0, 0, 0];
  for await (const { atMs, headingDeg, speedMPerS, read } of store.columns(window)) {
    rows += atMs.length;
    for (let i = 0; i < read.length; i++) {
      if ((read[i]! & READ_HEADING) !== 0)
        [headings, headingSum] = [headings + 1, headingSum + headingDeg[i]!];
      if ((read[i]! & READ_SPEED) !== 0) [speeds, speedSum] = [speeds + 1, speedSum + speedMPerS[i]!];
    }
  }
  return { rows, headings, speeds, headingSum, speedSum };
}

function requireEqual(path: string, stored: ArchiveFigures, archived: ArchiveFigures): void {
  const isEqual = (Object.keys(stored) as (keyof ArchiveFigures)[]).every(
    (key) => Math.abs(stored[key] - archived[key]) <= SUM_SHARE * Math.abs(stored[key]),
  );
  if (isEqual) return;
  throw new VanewrightError({
    code: 'log/archive-differs',
    what: 'The archive does not read back as the store has it, so nothing was taken out of the store.',
    where: path,
    got: JSON.stringify(archived),
    allowed: JSON.stringify(stored),
    fix: 'Check the disk of --out, and archive into another folder.',
  });
}

/** Means of ten minutes, labelled by their end, as a table. */
async function* meansOf(store: SampleStore, window: SampleWindow): AsyncIterable<string> {
  yield csvText10Min([], true);
  let stream: PeriodStream | null = null;
  for await (const columns of store.columns(window)) {
    stream ??= new PeriodStream({
      intervalMs: usualStep(columns.atMs),
      calmBelowMPerS: REPORTED_CALM_M_PER_S,
    });
    yield csvText10Min(stream.addColumns(columns), false);
  }
  const last = stream?.end();
  if (last) yield csvText10Min([last], false);
}

/** Median time between two samples. [ms] */
function usualStep(atMs: Float64Array): number {
  const steps = atMs
    .subarray(1)
    .map((at, i) => at - atMs[i]!)
    .sort();
  return steps.length === 0 ? 1000 : steps[steps.length >> 1]!;
}

async function thinStation(
  span: StationSpan,
  { store, folder, untilMs }: { store: SampleStore; folder: ArchiveFolder; untilMs: number },
): Promise<{ files: ArchivedFile[]; means: string }> {
  const { station, firstMs } = span;
  const files: ArchivedFile[] = [];
  const parts: { readonly window: SampleWindow; readonly path: string }[] = [];
  for (const { name, fromMs, untilMs: endMs } of monthsOf(firstMs, untilMs - 1)) {
    const window = { station, fromMs: Math.max(fromMs, firstMs), untilMs: Math.min(endMs, untilMs) };
    const figures = await storeFigures(store, window);
    if (figures.rows === 0) continue;
    // No file of an earlier move is ever replaced by another one.
    const path = `samples/${folderOf(station)}/month=${name}/moved-${window.fromMs}-${window.untilMs}-${figures.rows}.parquet`;
    await folder.parquet(path, store, window);
    requireEqual(path, figures, await folder.figures(path));
    files.push({ path, station, month: name, rows: figures.rows });
    parts.push({ window, path });
  }
  const means = `means/${folderOf(station)}/from-${firstMs}-until-${untilMs - 1}.csv`;
  await folder.text(means, meansOf(store, { station, fromMs: firstMs, untilMs }));
  for (const { window, path } of parts) await store.moveOut(window, path);
  return { files, means };
}

/**
 * Moves whole months of old samples into an archive and keeps their 10-minute means beside it.
 *
 * Nothing leaves the store before every file of its station was written and read back with equal count and sums; the
 * repair ledger says what was moved where. The raw log stays as it is, so that a rebuild brings everything back.
 *
 * @param keepDays - Samples of this many days stay, and those of the month that these begin in. [d]
 * @param nowMs - [ms UTC]
 * @throws `log/archive-differs`, and what store and folder say.
 */
export async function thinRecord(
  store: SampleStore,
  folder: ArchiveFolder,
  { keepDays, nowMs }: { readonly keepDays: number; readonly nowMs: number },
): Promise<Thinned> {
  // A period is labelled by its end, so the sample of that very instant belongs to the period before it.
  const untilMs = monthBefore(nowMs, keepDays) + 1;
  const files: ArchivedFile[] = [];
  const means: string[] = [];
  for (const span of await store.stations()) {
    if (span.firstMs >= untilMs) continue;
    const thinned = await thinStation(span, { store, folder, untilMs });
    files.push(...thinned.files);
    means.push(thinned.means);
  }
  return { files, means, rows: files.reduce((sum, { rows }) => sum + rows, 0), untilMs: untilMs - 1 };
}
