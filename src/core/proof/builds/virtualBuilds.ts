import { throwIfAny, type Problem } from '../../error/index.ts';
import type { HeadPlan } from '../../head/index.ts';
import type { BuildStatistics } from '../proof.ts';
import { drawnConditions } from '../turn/conditions.ts';
import { daylightOf, takeDaylight } from '../turn/daylight.ts';
import { roomForErrors } from '../turn/turnErrors.ts';
import { findEvents, roomForEvents } from '../turn/turnEvents.ts';
import { turnModel, type TurnModel } from '../turn/turnModel.ts';
import { walkTurn } from '../turn/walkTurn.ts';
import type { CauseName } from './causeNames.ts';
import { BUILDS_PER_BLOCK, causeSizes, drawerOf, streamsOf } from './draws.ts';
import { addTally, countWorst, emptyTally, errorBelow, histogramOf, type BuildTally } from './tally.ts';
import { wilsonShare } from './wilson.ts';

/** Which builds to make, and what is asked of them. */
export interface BuildRequest {
  /** [-], whole, 1..10,000,000 */
  readonly builds: number;
  /** Any whole number from 0; equal seeds give equal builds. [-] */
  readonly seed: number;
  /** Largest error of a good build. [deg] */
  readonly accuracyDeg: number;
  /** Cause taken to be absent, the draws of all others staying as they are. */
  readonly without?: CauseName;
  /** Factors on the sizes of causes, the draws staying as they are; 1 where left out. [-] */
  readonly scaled?: Readonly<Partial<Record<CauseName, number>>>;
}

/** Most builds of one request: minutes of work, and far more than any yield needs. */
export const MOST_BUILDS = 10_000_000;

/**
 * Many builds of one design, each with edges, bore, sensors, resistors and thresholds drawn anew.
 *
 * Each build is turned once each way, where daylight comes and goes at noon and again at night. It is good when no word is one the code does not have, every position shows,
 * and no error exceeds `accuracyDeg`, be that less than a step or several.
 *
 * @throws `proof/builds-out-of-range`, `proof/seed-not-whole`, `proof/too-many-channels`
 * @check test/published/binary-misread, test/published/quantisation
 */
export function virtualBuilds(head: HeadPlan, request: BuildRequest): BuildStatistics {
  const tally = emptyTally();
  for (let batch = 0; batch < batchCount(request); batch++) addTally(tally, buildBatch(head, request, batch));
  return buildStatistics(tally, request);
}

/** Blocks made in one go: enough work that handing it to another thread costs nothing beside it. [-] */
const BLOCKS_PER_BATCH = 16;

/**
 * Batches that a request is made in, always the same whoever makes them. [-]
 *
 * @throws `proof/builds-out-of-range`, `proof/seed-not-whole`
 */
export function batchCount(request: BuildRequest): number {
  throwIfAny(requestProblems(request));
  return Math.ceil(request.builds / (BUILDS_PER_BLOCK * BLOCKS_PER_BATCH));
}

/**
 * The tally of one batch of builds; tallies added in the order of their batches give one result however they were made.
 *
 * @param batch - From 0 to `batchCount` − 1. [-]
 * @param each - Told of each build in turn: whether it is good, and its largest error. [deg]
 */
export function buildBatch(
  head: HeadPlan,
  request: BuildRequest,
  batch: number,
  each?: (isGood: boolean, maxDeg: number) => void,
): BuildTally {
  const model = turnModel(head);
  const tally = emptyTally();
  const drawer = drawerOf(model, causeSizes(head, request.without ?? null, request.scaled));
  const bench = benchOf(model);
  const mostDeg = request.accuracyDeg + ROUNDING_DEG;
  const first = batch * BLOCKS_PER_BATCH;
  for (let block = first; block < first + BLOCKS_PER_BATCH; block++) {
    const streams = streamsOf(request.seed, block);
    const builds = Math.min(BUILDS_PER_BLOCK, request.builds - block * BUILDS_PER_BLOCK);
    for (let build = 0; build < builds; build++) {
      const before = tally.good;
      drawer.draw(streams, bench.conditions);
      const maxDeg = turnBuild(model, bench, mostDeg, tally);
      each?.(tally.good > before, maxDeg);
    }
  }
  return tally;
}

/** Half a step is met by a disc without error, give or take the rounding of sums of angles. [deg] */
const ROUNDING_DEG = 1e-9;

function requestProblems({ builds, seed }: BuildRequest): Problem[] {
  const problems: Problem[] = [];
  if (!Number.isInteger(builds) || builds < 1 || builds > MOST_BUILDS) {
    problems.push({
      code: 'proof/builds-out-of-range',
      what: 'That many virtual builds cannot be made.',
      where: 'builds',
      got: String(builds),
      allowed: `a whole number from 1 to ${MOST_BUILDS}`,
      fix: 'Ask for 1000 builds, which know the yield within 3 %.',
    });
  }
  if (!Number.isSafeInteger(seed) || seed < 0) {
    problems.push({
      code: 'proof/seed-not-whole',
      what: 'The seed of the draws must be a whole number.',
      where: 'seed',
      got: String(seed),
      allowed: `a whole number from 0 to ${Number.MAX_SAFE_INTEGER}`,
      fix: 'Use seed 1.',
    });
  }
  return problems;
}

/** Room that every build is made in, one after another. */
type Bench = ReturnType<typeof benchOf>;

function benchOf(model: TurnModel) {
  return {
    conditions: drawnConditions(model),
    growing: roomForEvents(model),
    falling: roomForEvents(model),
    errors: roomForErrors(model.centresDeg.length),
    daylight: daylightOf(model.head),
  };
}

/** Turns a build both ways, by day and by night where that differs, and adds it to the tally; gives its largest error. [deg] */
function turnBuild(model: TurnModel, bench: Bench, mostDeg: number, tally: BuildTally): number {
  const { conditions, errors, daylight } = bench;
  const positions = model.centresDeg.length;
  let maxDeg = 0;
  let isLegal = true;
  let isSeen = true;
  const ways = daylight > 0 ? 4 : 2;
  for (let way = 0; way < ways; way++) {
    if (way === 2) takeDaylight(conditions, daylight);
    const sense = way % 2 === 0 ? 'growing' : 'falling';
    const events = bench[sense];
    findEvents(model, conditions, sense, events);
    walkTurn(model, events, sense, errors);
    // A build that shows nothing is as wrong as can be.
    const worstDeg = errors.shownDeg > 0 ? errors.maxDeg : 180;
    if (worstDeg > maxDeg) maxDeg = worstDeg;
    if (errors.illegalDeg > 0) isLegal = false;
    if (errors.shown < positions) isSeen = false;
    tally.squareSum += errors.squareSum;
    tally.shownDeg += errors.shownDeg;
    tally.misreadDeg += errors.misreadDeg;
    tally.illegalDeg += errors.illegalDeg;
    tally.turnedDeg += 360;
  }
  // A cause of no size is not drawn anew for the next build.
  if (daylight > 0) takeDaylight(conditions, -daylight);
  tally.builds += 1;
  if (isLegal && isSeen && maxDeg <= mostDeg) tally.good += 1;
  if (isLegal) tally.legal += 1;
  if (maxDeg <= mostDeg) tally.accurate += 1;
  if (maxDeg <= model.stepDeg + ROUNDING_DEG) tally.withinStep += 1;
  if (!isSeen) tally.unseen += 1;
  countWorst(tally, maxDeg);
  return maxDeg;
}

/** What a tally says of the builds of a request. */
export function buildStatistics(tally: BuildTally, { builds, seed }: BuildRequest): BuildStatistics {
  return {
    builds,
    seed,
    yield: wilsonShare(tally.good, builds),
    withinStep: wilsonShare(tally.withinStep, builds),
    withinAccuracy: wilsonShare(tally.accurate, builds),
    alwaysLegal: wilsonShare(tally.legal, builds),
    rmsDeg: tally.shownDeg > 0 ? Math.sqrt(tally.squareSum / tally.shownDeg) : null,
    maxErrorDeg: { p50: errorBelow(tally, 0.5), p95: errorBelow(tally, 0.95), worst: tally.worstDeg },
    histogram: histogramOf(tally),
    misreadShare: tally.misreadDeg / tally.turnedDeg,
    illegalShare: tally.illegalDeg / tally.turnedDeg,
    unseenBuilds: wilsonShare(tally.unseen, builds),
  };
}
