import {
  logDesign,
  logSources,
  type LogSummary,
  type ReadingChoices,
  type RememberedMoment,
} from '../../app/api.ts';
import { ZoneClock, type DateOrder, type LogSpeedUnit } from '../../core/record/index.ts';
import { VanewrightError } from '../../core/error/index.ts';
import type { Listening, RecordServerParts } from '../../server/recordServer.ts';
import { EXIT } from '../exit.ts';
import type { Outcome } from '../outcome.ts';
import type { Parts } from '../wire.ts';
import { progressLine } from './progressLine.ts';
import { summaryText } from './summaryText.ts';
import { machineClock, openSource, openStore } from './wire.ts';

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

async function log(
  parts: Parts,
  file: string,
  words: LogWords,
): Promise<{ summary: LogSummary; putAside: readonly string[] }> {
  const design = await logDesign(parts.files, file, words.station ?? null);
  const said = choicesOf(words);
  const opened = await openStore({ store: words.store, raw: words.raw ?? null });
  const progress = progressLine(process.stderr, machineClock.nowMs);
  const live = new LiveStations();
  let server: Listening | null = null;
  try {
    if (words.listen !== undefined) {
      server = await served({ store: opened.store, live }, words.listen);
      process.stderr.write(`Listening on ${server.url}\n`);
    }
    const isRebuild = words.rebuild === true || words.moment !== undefined;
    const moments = [...(opened.choices.moments ?? []), ...(words.moment ?? [])];
    // What is said at a rebuild is for everything that is there; else for the sources that come now.
    const choices = {
      ...opened.choices,
      ...(isRebuild ? said : {}),
      ...(moments.length > 0 ? { moments } : {}),
    };
    const { baud } = design.instrument.controller;
    const sources = await Promise.all(
      words.from.map((from) =>
        openSource({
          from,
          station: design.station,
          baud,
          rule: isRebuild ? {} : said,
          isOld: words.old === true,
        }),
      ),
    );
    const close = async (): Promise<void> =>
      void (await Promise.all(sources.map((source) => source.close())));
    const summary = await untilStopped(close, (isStopped) =>
      logSources(
        {
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
        },
        isStopped,
      ),
    );
    if (isRebuild) await opened.keepChoices(choices);
    return { summary, putAside: opened.putAside };
  } finally {
    progress.end();
    await server?.close();
    await opened.close();
  }
}

/** `vanewright log FILE --from SOURCE --store STORE` */
export async function runLog(parts: Parts, file: string, words: LogWords): Promise<Outcome> {
  const { summary, putAside } = await log(parts, file, words);
  return {
    exit: EXIT.good,
    text: summaryText(summary, putAside),
    document: { command: 'log', ok: true, ...summary, putAside },
  };
}
