import { VanewrightError } from '../../error/index.ts';
import type { HeadPlan } from '../../head/index.ts';
import type { Need } from '../../instrument/index.ts';
import { virtualBuilds, type BuildRequest } from '../builds/virtualBuilds.ts';
import type { BuildStatistics, UsefulChange } from '../proof.ts';
import { exactTurn, nightErrors } from '../turn/exactTurn.ts';
import { candidates } from './candidates.ts';

/** Changes that are told. [-] */
const TOLD = 3;
/** Builds that a change is judged on. [-] */
const CHANGE_BUILDS = 512;
/** Gains below these are lost in the making: a thousandth of the builds, a hundredth of the error. [-] */
const LEAST_GAIN = { yield: 0.001, error: 0.01 } as const;

/** What a design reaches: enough to order designs by. */
interface Reached {
  readonly verdict: 'yes' | 'no';
  readonly builds: BuildStatistics;
  /** Turn rate that is missing, as a share of the one asked. [-] */
  readonly tooSlow: number;
}

/**
 * The three most useful changes, each tried on the same builds as the design itself.
 *
 * @param own - The design's own builds.
 * @returns Most useful first; none where nothing tried would be noticed. n ≤ 3
 * @check src/core/proof/changes/usefulChanges.test.ts
 */
export function usefulChanges(
  head: HeadPlan,
  need: Need,
  request: BuildRequest,
  own: BuildStatistics,
): UsefulChange[] {
  const now = reached(head, need, own);
  const tried = candidates(head, need).flatMap(({ title, how, edits, plan }) => {
    const changed = planned(plan);
    if (changed === null) return [];
    const builds = virtualBuilds(changed, { ...request, builds: Math.min(request.builds, CHANGE_BUILDS) });
    const then = reached(changed, need, builds);
    return helps(now, then) ? [{ title, how, edits, changed, then }] : [];
  });
  tried.sort((a, b) => order(b.then, a.then));
  return tried.slice(0, TOLD).map(({ title, how, edits, changed, then }) => ({
    ...{ title, how, edits },
    verdict: then.verdict,
    yield: then.builds.yield,
    p95Deg: then.builds.maxErrorDeg.p95,
    limitDegPerS: changed.speed.limitDegPerS,
  }));
}

/** The changed design, or `null` where it cannot be made. */
function planned(plan: () => HeadPlan): HeadPlan | null {
  try {
    const head = plan();
    return head.faults.length === 0 ? head : null;
  } catch (error) {
    if (error instanceof VanewrightError) return null;
    throw error;
  }
}

/** Half a step is met by a disc without error, give or take the rounding of sums of angles. [deg] */
const ROUNDING_DEG = 1e-9;

function reached(head: HeadPlan, need: Need, builds: BuildStatistics): Reached {
  const skies = [exactTurn(head).errors, nightErrors(head)].filter((errors) => errors !== null);
  const tooSlow = Math.max(0, 1 - head.speed.limitDegPerS / need.turnRateDegPerS);
  const reads =
    head.faults.length === 0 &&
    skies.every(
      ({ maxDeg, illegalShare, unseenPositions }) =>
        maxDeg !== null &&
        maxDeg <= need.accuracyDeg + ROUNDING_DEG &&
        illegalShare === 0 &&
        unseenPositions.length === 0,
    );
  const isGood = reads && tooSlow === 0 && builds.yield.value >= need.wantedYield;
  return { verdict: isGood ? 'yes' : 'no', builds, tooSlow };
}

function helps(now: Reached, then: Reached): boolean {
  if (then.verdict !== now.verdict) return then.verdict === 'yes';
  if (then.builds.yield.value < now.builds.yield.value - LEAST_GAIN.yield) return false;
  const { p95 } = now.builds.maxErrorDeg;
  return (
    then.builds.yield.value - now.builds.yield.value >= LEAST_GAIN.yield ||
    then.tooSlow < now.tooSlow - LEAST_GAIN.error ||
    p95 - then.builds.maxErrorDeg.p95 >= LEAST_GAIN.error * p95
  );
}

/** Positive where the first is the better. */
function order(a: Reached, b: Reached): number {
  const good = (reached: Reached): number => (reached.verdict === 'yes' ? 1 : 0);
  return (
    good(a) - good(b) ||
    a.builds.yield.value - b.builds.yield.value ||
    b.tooSlow - a.tooSlow ||
    b.builds.maxErrorDeg.p95 - a.builds.maxErrorDeg.p95
  );
}
