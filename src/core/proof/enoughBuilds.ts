import { showNumber } from '../units/index.ts';
import { MOST_BUILDS } from './builds/virtualBuilds.ts';
import { Z95 } from './builds/wilson.ts';
import type { BuildStatistics, Share } from './proof.ts';

/**
 * Whether the range of a share lies wholly on one side of what is wanted, so that more builds would hardly change sides.
 *
 * @param wanted - Share wanted. [-], above 0 and below 1
 * @check src/core/proof/enoughBuilds.test.ts
 */
export function isSettled({ value, low, high }: Share, wanted: number): boolean {
  return value >= wanted ? low >= wanted : high < wanted;
}

/**
 * Virtual builds whose range would lie wholly on one side of what is wanted, if the share stayed as it is.
 *
 * @param value - Share found. [-], 0..1
 * @param wanted - Share wanted. [-], above 0 and below 1
 * @returns Whole; infinite where the two are equal. [-]
 * @source derived: an end w of Wilson's range solves (value − w)² = z² w (1 − w)/n.
 * @check src/core/proof/enoughBuilds.test.ts
 */
export function buildsToSettle(value: number, wanted: number): number {
  const apart = (value - wanted) / Z95;
  return Math.ceil((wanted * (1 - wanted)) / (apart * apart));
}

/** A number of builds as a maker would type it: two figures, rounded up. */
function roundUp(builds: number): number {
  const step = 10 ** Math.max(0, Math.floor(Math.log10(builds)) - 1);
  return Math.ceil(builds / step) * step;
}

/** That so few builds cannot tell, and how many would; `null` where they can. */
export function tooFewToTell(builds: BuildStatistics, wanted: number): string | null {
  const { value, low, high } = builds.yield;
  if (isSettled(builds.yield, wanted)) return null;
  const percent = (share: number): string => showNumber(100 * share, 1);
  const enough = roundUp(buildsToSettle(value, wanted));
  const cure =
    enough > MOST_BUILDS
      ? 'and the two lie too near to each other to be told apart'
      : `and ${enough} would do if the share stays as it is`;
  return (
    `${builds.builds} virtual ${builds.builds === 1 ? 'build is' : 'builds are'} too few to be sure: the true share may be ` +
    `anything from ${percent(low)} to ${percent(high)} %, on either side of ${percent(wanted)} %, ${cure}.`
  );
}

/** How many of the builds are good, in whole numbers: `973 of 1000`. */
export function goodOf(builds: BuildStatistics): string {
  return `${Math.round(builds.yield.value * builds.builds)} of ${builds.builds}`;
}
