import { VanewrightError } from '../core/error/index.ts';
import { INSTRUMENT_FILE_MOST_BYTES, readInstrument, type Instrument } from '../core/instrument/index.ts';
import { readingRuleOf, stationName, type LedgerReason, type ReadingRule } from '../core/record/index.ts';
import type { InstrumentFiles, LineSource, SourceBytes, StationSpan } from '../ports/index.ts';
import { Recorder, type RecorderParts } from './logRecorder.ts';

/** What is known of an instrument before its lines come. */
export interface LogDesign {
  readonly instrument: Instrument;
  readonly rule: ReadingRule;
  readonly station: string;
}

/** What logging came to. */
export interface LogSummary {
  readonly stations: readonly StationSpan[];
  /** Of the whole store. */
  readonly ledger: readonly { readonly reason: LedgerReason; readonly count: number }[];
  /** Samples stored by this run. [-] */
  readonly stored: number;
  readonly bytes: number;
}

/**
 * Reads the instrument whose lines are to be logged.
 *
 * @param station - Name for its samples; `null` takes the instrument's own.
 * @throws the problems of the file, and `record/station-name`.
 */
export async function logDesign(
  files: InstrumentFiles,
  path: string,
  station: string | null,
): Promise<LogDesign> {
  const { instrument } = readInstrument(await files.readText(path, INSTRUMENT_FILE_MOST_BYTES), path);
  return {
    instrument,
    rule: readingRuleOf(instrument, null),
    station: stationName(station ?? plain(instrument.name)),
  };
}

/** A name of an instrument as a station may have it. */
function plain(name: string): string {
  return name
    .replace(/[^\p{L}\p{N} ._-]+/gu, '-')
    .replace(/\.{2,}/g, '.')
    .replace(/^[^\p{L}\p{N}]+|[ .-]+$/gu, '')
    .slice(0, 63);
}

/** What a run of the logger takes. */
export interface LogRun extends RecorderParts {
  readonly sources: readonly LineSource[];
  /** Read the whole raw log again before anything else. */
  readonly isRebuild: boolean;
  /** Hears of bytes once they are safe. */
  readonly onBytes?: (bytes: SourceBytes) => void;
}

/** Time between two tries while the disk is full. [ms] */
const FULL_AGAIN_MS = 5000;

/** Gives bytes to the recorder; while the disk is full they wait here and their source with them. */
async function kept(
  recorder: Recorder,
  bytes: SourceBytes,
  run: LogRun,
  isStopped: () => boolean,
): Promise<void> {
  for (;;) {
    try {
      return await recorder.take(bytes);
    } catch (error) {
      const isFull = error instanceof VanewrightError && error.problems[0]!.code === 'log/disk-full';
      // An old log can be read again later; what a controller sent can not.
      if (!isFull || bytes.begin.source === 'file' || isStopped()) throw error;
      run.onStoreLost?.(error);
      await new Promise<void>((done) => void run.clock.after(FULL_AGAIN_MS, done));
    }
  }
}

/**
 * Logs from sources until all of them end or are closed; everything acknowledged is in the raw log.
 *
 * @throws `log/source-not-found`, `log/disk-full` for old logs, and what a source says.
 */
export async function logSources(run: LogRun, isStopped: () => boolean = () => false): Promise<LogSummary> {
  const recorder = new Recorder(run);
  let bytes = 0;
  if (run.isRebuild) await recorder.rebuild();
  await recorder.start();
  const running = run.sources.map((source) =>
    source.run(async (piece) => {
      await kept(recorder, piece, run, isStopped);
      bytes += piece.bytes.length;
      run.onBytes?.(piece);
    }),
  );
  try {
    await Promise.all(running);
  } catch (error) {
    await Promise.all(run.sources.map((source) => source.close()));
    await Promise.allSettled(running);
    throw error;
  } finally {
    await recorder.close();
  }
  const { store } = run;
  return {
    stations: await store.stations(),
    ledger: await store.ledgerCounts(),
    stored: recorder.stored,
    bytes,
  };
}
