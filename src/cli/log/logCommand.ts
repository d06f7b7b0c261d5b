import {
  LiveStations,
  logDesign,
  logSources,
  type LogDesign,
  type LogRun,
  type LogSummary,
  type ReadingChoices,
} from '../../app/api.ts';
import { ZoneClock } from '../../core/record/index.ts';
import type { LineSource } from '../../ports/index.ts';
import { EXIT } from '../exit.ts';
import type { Outcome } from '../outcome.ts';
import type { Parts } from '../wire.ts';
import type { LogWords } from './logWords.ts';
import { listening, untilStopped } from './listening.ts';
import { progressLine } from './progressLine.ts';
import { runShared } from './sharedCommand.ts';
import { summaryText } from './summaryText.ts';
import { runWhatIf } from './whatIf.ts';
import { machineClock, openSource, openStore, type OpenStore } from './wire.ts';

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

function sourcesOf(
  words: LogWords,
  { instrument, station }: LogDesign,
  rule: ReadingChoices,
  logName: string,
): Promise<LineSource[]> {
  const { baud } = instrument.controller;
  const client = { id: `vanewright-${logName}`, group: null };
  const known = { station, baud, rule, isOld: words.old === true, client };
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
  const endListening = await listening(words.listen, { store: opened.store, live });
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
  if (words.group !== undefined) return runShared(design, said, { ...words, group: words.group });
  const opened = await openStore({ store: words.store, raw: words.raw ?? null });
  try {
    if (words.whatIf) return await runWhatIf(design, said, opened);
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
