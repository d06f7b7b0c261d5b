import {
  LiveStations,
  logDesign,
  logSources,
  type LogDesign,
  type LogRun,
  type LogSummary,
  type ReadingChoices,
  type RememberedMoment,
} from '../../app/api.ts';
import { ZoneClock, type DateOrder, type LogSpeedUnit } from '../../core/record/index.ts';
import { VanewrightError } from '../../core/error/index.ts';
import type { LineSource } from '../../ports/index.ts';
import type { Listening, RecordServerParts } from '../../server/recordServer.ts';
import { EXIT } from '../exit.ts';
import type { Outcome } from '../outcome.ts';
import type { Parts } from '../wire.ts';
import { progressLine } from './progressLine.ts';
import { summaryText } from './summaryText.ts';
import { machineClock, openSource, openStore, type OpenStore } from './wire.ts';

/** What stands behind `log`, read. */
export interface LogWords {
  readonly from: readonly string[];
  readonly store: string;
  readonly raw?: string;
  readonly station?: string;
  readonly zone?: string;
  readonly dateOrder?: DateOrder;
  readonly speedUnit?: LogSpeedUnit;
  readonly headingAs?: 'degrees' | 'positions';
  readonly decimalComma?: boolean;
  readonly moment?: readonly RememberedMoment[];
  readonly old?: boolean;
  readonly rebuild?: boolean;
  readonly group?: string;
  /** Port of the local web interface. [-] */
  readonly listen?: number;
}

/** What the words say about how lines are read. */
function choicesOf({ zone, dateOrder, speedUnit, headingAs, decimalComma }: LogWords): ReadingChoices {
  // A zone that does not exist is refused now, and not in the middle of an import.
  if (zone !== undefined) new ZoneClock(zone);
  return {
    ...(zone === undefined ? {} : { zone }),
    ...(dateOrder === undefined ? {} : { dateOrder }),
    ...(speedUnit === undefined ? {} : { speedUnit }),
    ...(headingAs === undefined ? {} : { headingAs }),
    ...(decimalComma === undefined ? {} : { decimalComma }),
  };
}

/** Runs the work; Ctrl-C closes the sources, so that what came is stored before the end. */
async function untilStopped<T>(
  close: () => Promise<void>,
  work: (isStopped: () => boolean) => Promise<T>,
): Promise<T> {
  let isStopped = false;
  const stop = (): void => {
    isStopped = true;
    void close();
  };
  process.once('SIGINT', stop).once('SIGTERM', stop);
  try {
    return await work(() => isStopped);
  } finally {
    process.off('SIGINT', stop).off('SIGTERM', stop);
  }
}

/** The web interface; its packages are loaded only when it is wanted. */
async function served(parts: RecordServerParts, port: number): Promise<Listening> {
  const { recordServer } = await import('../../server/recordServer.ts');
  try {
    return await recordServer(parts, port);
  } catch (error) {
    throw new VanewrightError({
      code: 'log/port-taken',
      what: 'The web interface cannot listen on that port.',
      where: '--listen',
      got: `${port}: ${error instanceof Error ? error.message : String(error)}`,
      allowed: 'a free port from 1024 to 65535, or 0 for any',
      fix: 'Use --listen 0, which takes a free one and prints it.',
    });
  }
}

/** Serves the wind of now, if that is wanted; gives back what ends it. */
async function listening(words: LogWords, parts: RecordServerParts): Promise<() => Promise<void>> {
  if (words.listen === undefined) return async () => {};
  const server = await served(parts, words.listen);
  process.stderr.write(`Listening on ${server.url}\n`);
  return () => server.close();
}

function sourcesOf(
  words: LogWords,
  { instrument, station }: LogDesign,
  rule: ReadingChoices,
  logName: string,
): Promise<LineSource[]> {
  const { baud } = instrument.controller;
  const known = { station, baud, rule, isOld: words.old === true, group: words.group ?? null, logName };
  return Promise.all(words.from.map((from) => openSource({ from, ...known })));
}

async function record(
  words: LogWords,
  design: LogDesign,
  opened: OpenStore,
  said: ReadingChoices,
): Promise<LogSummary> {
  const isRebuild = words.rebuild === true || words.moment !== undefined;
  const moments = [...(opened.choices.moments ?? []), ...(words.moment ?? [])];
  // What is said at a rebuild is for everything that is there; else for the sources that come now.
  const choices = {
    ...opened.choices,
    ...(isRebuild ? said : {}),
    ...(moments.length > 0 ? { moments } : {}),
  };
  const live = new LiveStations();
  const progress = progressLine(process.stderr, machineClock.nowMs);
  const sources = await sourcesOf(words, design, isRebuild ? {} : said, opened.log.name);
  const run: LogRun = {
    ...opened,
    clock: machineClock,
    rule: design.rule,
    choices,
    sources,
    isRebuild,
    onSamples: (samples) => live.take(samples),
    onBytes: progress.show,
    onStoreLost: (error) =>
      process.stderr.write(`${error instanceof Error ? error.message : String(error)}\n`),
  };
  const close = async (): Promise<void> => void (await Promise.all(sources.map((source) => source.close())));
  const endListening = await listening(words, { store: opened.store, live });
  try {
    const summary = await untilStopped(close, (isStopped) => logSources(run, isStopped));
    if (isRebuild) await opened.keepChoices(choices);
    return summary;
  } finally {
    progress.end();
    await endListening();
  }
}

/** `vanewright log FILE --from SOURCE --store STORE` */
export async function runLog(parts: Parts, file: string, words: LogWords): Promise<Outcome> {
  const design = await logDesign(parts.files, file, words.station ?? null);
  const said = choicesOf(words);
  const opened = await openStore({ store: words.store, raw: words.raw ?? null });
  try {
    const summary = await record(words, design, opened, said);
    const { putAside } = opened;
    return {
      exit: EXIT.good,
      text: summaryText(summary, putAside),
      document: { command: 'log', ok: true, ...summary, putAside },
    };
  } finally {
    await opened.close();
  }
}
