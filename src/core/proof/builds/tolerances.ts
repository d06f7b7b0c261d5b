import type { HeadPlan } from '../../head/index.ts';
import type { CauseName } from './causeNames.ts';
import { virtualBuilds, type BuildRequest } from './virtualBuilds.ts';

/** Builds that a tolerance is judged on: they know a yield within 8 %, and a search needs a dozen lots of them. [-] */
const TOLERANCE_BUILDS = 128;
/** Farthest that sizes are stretched; beyond it a cause hardly matters. [-] */
const MOST = 8;
/** Smallest share of a size that is still worth asking for. [-] */
const LEAST = 1 / 16;
/** Halvings of the factor's range, which leave it known within 4 %. */
const STEPS = 6;

/**
 * The loosest tolerances that still reach a wanted yield: the largest factor on the sizes of some causes, all else as it is.
 *
 * Every factor is tried on the same draws, so that the yield falls smoothly as sizes grow.
 *
 * @param request - Its builds are taken up to 128. [-]
 * @param wantedYield - Share of builds that must meet the need. [-]
 * @param causes - Whose sizes are multiplied.
 * @returns Factor, 8 at most; `null` where even a sixteenth is not enough. [-]
 * @check src/core/proof/builds/tolerances.test.ts
 */
export function loosestFactor(
  head: HeadPlan,
  request: BuildRequest,
  wantedYield: number,
  causes: readonly CauseName[],
): number | null {
  const builds = Math.min(request.builds, TOLERANCE_BUILDS);
  const reaches = (factor: number): boolean => {
    const scaled = Object.fromEntries(causes.map((cause) => [cause, factor]));
    return virtualBuilds(head, { ...request, builds, scaled }).yield.value >= wantedYield;
  };
  if (reaches(MOST)) return MOST;
  const isGoodNow = reaches(1);
  if (!isGoodNow && !reaches(LEAST)) return null;
  let [low, high] = isGoodNow ? [1, MOST] : [LEAST, 1];
  for (let step = 0; step < STEPS; step++) {
    const middle = Math.sqrt(low * high);
    if (reaches(middle)) low = middle;
    else high = middle;
  }
  return low;
}
