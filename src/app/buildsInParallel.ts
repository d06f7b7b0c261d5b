import type { HeadPlan } from '../core/head/index.ts';
import {
  addTally,
  batchCount,
  buildStatistics,
  emptyTally,
  presentCauses,
  sharedDesign,
  virtualBuilds,
  type BuildMaker,
  type BuildRequest,
  type BuildStatistics,
} from '../core/proof/index.ts';
import type { BuildWorkers } from '../ports/index.ts';

/** Builds below which starting threads costs more than it saves. [-] */
const WORTH_SHARING = 8_192;

/**
 * Builds of one request made by many hands: the same numbers as `virtualBuilds` gives.
 *
 * @throws `proof/builds-out-of-range`, `proof/seed-not-whole`
 */
export async function buildsInParallel(
  workers: BuildWorkers,
  head: HeadPlan,
  request: BuildRequest,
): Promise<BuildStatistics> {
  const design = sharedDesign(head);
  const batches = Array.from({ length: batchCount(request) }, (_, batch) => batch);
  const tally = emptyTally();
  for (const made of await Promise.all(batches.map((batch) => workers.tally({ design, request, batch })))) {
    addTally(tally, made);
  }
  return buildStatistics(tally, request);
}

/**
 * A maker of builds for `prove` with a design's own builds, and those without each cause, made beforehand by many hands.
 *
 * Builds of any other design or request are made in this thread.
 */
export async function sharedMaker(
  workers: BuildWorkers | null,
  head: HeadPlan,
  request: BuildRequest,
): Promise<BuildMaker> {
  if (workers === null || request.builds < WORTH_SHARING) return virtualBuilds;
  const wanted = [null, ...presentCauses(head)];
  const made = await Promise.all(
    wanted.map((without) =>
      buildsInParallel(workers, head, without === null ? request : { ...request, without }),
    ),
  );
  const known = new Map(wanted.map((without, i) => [without, made[i]!]));
  return (design, asked) => {
    const isKnown = design === head && asked.builds === request.builds && asked.scaled === undefined;
    return (isKnown ? known.get(asked.without ?? null) : undefined) ?? virtualBuilds(design, asked);
  };
}
