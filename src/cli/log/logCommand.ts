import {
  LiveStations,
  logDesign,
  logSources,
  watchFaults,
  type LogDesign,
  type LogRun,
  type LogSummary,
  type ReadingChoices,
  type WatchedFaults,
} from '../../app/api.ts';
import { ZoneClock } from '../../core/record/index.ts';
import type { LineSource } from '../../ports/index.ts';
import { EXIT } from '../exit.ts';
import type { Outcome } from '../outcome.ts';
import type { Parts } from '../wire.ts';
import { VanewrightError } from '../../core/error/index.ts';
import { openAlerts } from './alerts/wire.ts';
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

/** Watches for faults where someone wants to hear of them. */
async function watched(
  parts: Parts,
  file: string,
  words: LogWords,
  { store }: OpenStore,
): Promise<WatchedFaults | null> {
  if (words.alert.length === 0 && words.listen === undefined) return null;
  const channels = await Promise.all(words.alert.map((where) => openAlerts(where, process.env)));
  const onTrouble = (text: string): void => void process.stderr.write(`${text}\n`);
  return watchFaults({ files: parts.files, path: file, store, clock: machineClock, channels, onTrouble });
}

async function record(
  words: LogWords,
  design: LogDesign,
  opened: OpenStore,
  said: ReadingChoices,
  watching: WatchedFaults | null,
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
    onSamples: (samples) => {
      live.take(samples);
      watching?.faults.take(samples);
    },
    onBytes: progress.show,
    onStoreLost: (error) =>
      process.stderr.write(`${error instanceof Error ? error.message : String(error)}\n`),
  };
  const close = async (): Promise<void> => void (await Promise.all(sources.map((source) => source.close())));
  const endListening = await listening(words.listen, opened.notice, {
    store: opened.store,
    live,
    ...(watching ? { alerts: watching.faults } : {}),
  });
  try {
    const summary = await untilStopped(close, (isStopped) => logSources(run, isStopped));
    if (isRebuild) await opened.keepChoices(choices);
    return summary;
  } finally {
    progress.end();
    await endListening();
  }
}

function alertsInGroup(group: string): VanewrightError {
  return new VanewrightError({
    code: 'log/alert-group',
    what: 'A worker of a group sees only part of the lines, so it cannot watch for faults.',
    where: '--alert',
    got: `--group ${group}`,
    allowed: 'alerts from a logger without a group',
    fix: 'Leave --alert out here, and run one logger without --group beside it for the alerts.',
  });
}

/** `vanewright log FILE --from SOURCE --store STORE` */
export async function runLog(parts: Parts, file: string, words: LogWords): Promise<Outcome> {
  const design = await logDesign(parts.files, file, words.station ?? null);
  const said = choicesOf(words);
  if (words.group !== undefined && words.alert.length > 0) throw alertsInGroup(words.group);
  if (words.group !== undefined) return runShared(design, said, { ...words, group: words.group });
  const opened = await openStore({ store: words.store, raw: words.raw ?? null });
  let watching: WatchedFaults | null = null;
  try {
    if (words.whatIf) return await runWhatIf(design, said, opened);
    watching = await watched(parts, file, words, opened);
    const summary = await record(words, design, opened, said, watching);
    const { putAside } = opened;
    return {
      exit: EXIT.good,
      text: summaryText(summary, putAside),
      document: { command: 'log', ok: true, ...summary, putAside },
    };
  } finally {
    await watching?.close();
    await opened.close();
  }
}
