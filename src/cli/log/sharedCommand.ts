import { LiveStations, logShared, type LogDesign, type ReadingChoices } from '../../app/api.ts';
import { throwIfAny, type Problem } from '../../core/error/index.ts';
import { EXIT } from '../exit.ts';
import type { Outcome } from '../outcome.ts';
import { listening, untilStopped } from './listening.ts';
import type { LogWords } from './logWords.ts';
import { progressLine } from './progressLine.ts';
import { summaryText } from './summaryText.ts';
import { isBroker, isServer, machineClock, openShared, openSource } from './wire.ts';

/** Messages are taken one after another on a connection, so several share the waiting for the disk. [-] */
const CONNECTIONS = 8;

/** Refuses what a worker without a memory of its own cannot do; all of it at once. */
function requireShareable({ store, from, moment, worker }: LogWords): void {
  const problems: Problem[] = [];
  if (!isServer(store))
    problems.push({
      code: 'log/group-store',
      what: 'Workers of a group need a store that all of them reach.',
      where: '--store',
      got: store,
      allowed: 'postgres://user@host/database',
      fix: 'Name a PostgreSQL store, or leave --group out.',
    });
  for (const one of from.filter((source) => !isBroker(source)))
    problems.push({
      code: 'log/group-source',
      what: 'Workers of a group share what a broker sends, and nothing else.',
      where: '--from',
      got: one,
      allowed: 'mqtt://host/topic',
      fix: 'Record that source with a logger of its own, without --group.',
    });
  if (from.length > 0 && worker === undefined)
    problems.push({
      code: 'log/group-worker',
      what: 'The worker has no name by which the broker knows it again.',
      where: '--worker',
      got: 'nothing',
      allowed: 'a name that no other worker of the group has, the same at every start',
      fix: 'Add --worker 1, and --worker 2 for the next one.',
    });
  if (moment !== undefined)
    problems.push({
      code: 'log/group-moment',
      what: 'Lines of a broker are placed in time by when they come.',
      where: '--moment',
      got: `${moment.length} moments`,
      allowed: 'none together with --group',
      fix: 'Leave --moment out.',
    });
  throwIfAny(problems);
}

/** `vanewright log FILE --from mqtt://host/topic --store postgres://host/database --group NAME --worker NAME` */
export async function runShared(
  { instrument, station, rule }: LogDesign,
  said: ReadingChoices,
  words: LogWords & { readonly group: string },
): Promise<Outcome> {
  requireShareable(words);
  const { group, worker = '' } = words;
  const names = words.from.flatMap((from, f) =>
    Array.from({ length: CONNECTIONS }, (_, c) => ({ from, id: `vanewright-${group}-${worker}-${f}-${c}` })),
  );
  const { baud } = instrument.controller;
  const connections = await Promise.all(
    names.map(async ({ from, id }) => ({
      worker: id,
      source: await openSource({ from, station, baud, rule: said, isOld: false, client: { id, group } }),
    })),
  );
  const { store, feeds } = await openShared(words.store);
  const live = new LiveStations();
  const progress = progressLine(process.stderr, machineClock.nowMs);
  const close = async (): Promise<void> =>
    void (await Promise.all(connections.map(({ source }) => source.close())));
  const endListening = await listening(words.listen, null, { store, live });
  try {
    const run = {
      feeds,
      connections,
      clock: machineClock,
      rule: { ...rule, ...said, placements: [] },
      isRebuild: words.rebuild === true,
      onSamples: live.take.bind(live),
      onBytes: progress.show,
      onStoreLost: (error: unknown) => void process.stderr.write(`${String(error)}\n`),
    };
    const { stored, bytes } = await untilStopped(close, (isStopped) => logShared(run, isStopped));
    const summary = { stations: await store.stations(), ledger: await store.ledgerCounts(), stored, bytes };
    return {
      exit: EXIT.good,
      text: summaryText(summary, []),
      document: { command: 'log', ok: true, ...summary, putAside: [] },
    };
  } finally {
    progress.end();
    await endListening();
    await feeds.close();
    await store.close();
  }
}
