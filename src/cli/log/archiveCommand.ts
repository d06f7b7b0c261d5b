import { archiveRecord, thinRecord } from '../../app/api.ts';
import { VanewrightError } from '../../core/error/index.ts';
import { EXIT } from '../exit.ts';
import type { Outcome } from '../outcome.ts';
import { copyStore, machineClock, openArchive, openStore } from './wire.ts';

/** What stands behind `archive`, read. */
export interface ArchiveWords {
  readonly store: string;
  readonly raw?: string;
  readonly out?: string;
  readonly as: 'parquet' | 'csv' | 'raw';
  readonly since?: number;
  readonly until?: number;
  readonly restore?: string;
  /** Samples of this many days stay in the store, older ones are moved. [d] */
  readonly keepDays?: number;
}

function outOf({ out }: ArchiveWords): string {
  if (out !== undefined) return out;
  throw new VanewrightError({
    code: 'log/no-out',
    what: 'It is not said where the archive goes.',
    where: '--out',
    got: 'nothing',
    allowed: 'a folder for the archive, or --restore with the folder of a backup',
    fix: 'Add --out archive',
  });
}

async function copy(words: ArchiveWords): Promise<Outcome> {
  const isRestore = words.restore !== undefined;
  const from = words.restore ?? words.store;
  const to = isRestore ? words.store : outOf(words);
  const copied = await copyStore(from, to);
  const { entries, bytes } = copied;
  const next = isRestore ? `\nNext: vanewright log FILE --store ${to} builds the store from it.` : '';
  return {
    exit: EXIT.good,
    text: `Copied the raw log, ${entries} entries of ${bytes} bytes, to ${to}.${next}`,
    document: { command: 'archive', ok: true, from, to, ...copied },
  };
}

/** `vanewright archive --store STORE --out DIR --keep-days DAYS` */
async function thin(words: ArchiveWords, keepDays: number): Promise<Outcome> {
  requirePlain(words);
  const out = outOf(words);
  const opened = await openStore({ store: words.store, raw: words.raw ?? null });
  try {
    const nowMs = machineClock.nowMs();
    const thinned = await thinRecord(opened.store, await openArchive(out), { keepDays, nowMs });
    const { files, means, rows } = thinned;
    const until = new Date(thinned.untilMs).toISOString();
    return {
      exit: EXIT.good,
      text: [
        `Moved ${rows} samples up to ${until} to ${out}; each file was read back before its samples left the store.`,
        ...files.map(({ path, rows: n }) => `  ${path}: ${n}`),
        ...means.map((path) => `  ${path}: 10-minute means`),
        'The raw log is as it was: a rebuild brings the samples back.',
      ].join('\n'),
      document: { command: 'archive', ok: true, folder: out, ...thinned },
    };
  } finally {
    await opened.close();
  }
}

/** Moving is by whole months and to Parquet; anything else would leave half a month behind. */
function requirePlain({ as, since, until }: ArchiveWords): void {
  if (as === 'parquet' && since === undefined && until === undefined) return;
  throw new VanewrightError({
    code: 'log/keep-days-alone',
    what: 'Whole months are moved, as Parquet.',
    where: '--keep-days',
    got: as === 'parquet' ? '--since or --until' : `--as ${as}`,
    allowed: '--keep-days with --store and --out',
    fix: 'Leave --since, --until and --as out.',
  });
}

/** `vanewright archive --store STORE --out DIR` and `vanewright archive --store STORE --restore DIR` */
export async function runArchive(words: ArchiveWords): Promise<Outcome> {
  if (words.keepDays !== undefined) return thin(words, words.keepDays);
  if (words.restore !== undefined || words.as === 'raw') return copy(words);
  const out = outOf(words);
  const opened = await openStore({ store: words.store, raw: words.raw ?? null });
  try {
    const folder = await openArchive(out);
    const request = { format: words.as, sinceMs: words.since ?? null, untilMs: words.until ?? null };
    const { files, rows } = await archiveRecord(opened.store, folder, request);
    return {
      exit: EXIT.good,
      text: [
        `Archived ${rows} samples in ${files.length} files of ${out}; datapackage.json says what the columns mean.`,
        ...files.map(({ path, rows: n }) => `  ${path}: ${n}`),
      ].join('\n'),
      document: { command: 'archive', ok: true, folder: out, files, rows },
    };
  } finally {
    await opened.close();
  }
}
