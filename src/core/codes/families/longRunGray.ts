import { VanewrightError } from '../../error/index.ts';
import type { CodeBuild, CodeFamily, CodeOptions } from '../family.ts';
import { StepCounter, type SearchLimits } from '../search/limits.ts';
import { shortestRun, type LongestRuns } from '../search/longestRuns.ts';
import { searchLongRuns } from '../search/longRunSearch.ts';
import { coarsestFirst, tracksFor } from '../wordTracks.ts';
import { centredGray } from './reflectedGray.ts';
import { channelsRefusal, oddCountRefusal } from './refusals.ts';

/** Every fourth step changes one of the two added channels, so their runs are eight steps long. */
const WEAVE = ['old', 'old', 'old', 'added'] as const;

/** Gray code of the two added channels. */
const ADDED = [0b00, 0b01, 0b11, 0b10] as const;

/**
 * A code on two channels more and four times as long: three steps of the old code, then one of the added channels.
 *
 * @returns The longer code, or `null` where words would repeat: a length that 4 does not divide, or 3 does.
 * @source L. Goddyn, P. Gvozdjak, Binary Gray codes with long bit runs, Electron. J. Combin. 10 (2003) R27, theorem 1.
 */
export function woven(words: readonly number[]): number[] | null {
  let [old, added] = [0, 0];
  const longer: number[] = [];
  for (let step = 0; step < 4 * words.length; step++) {
    longer.push((words[old % words.length]! << 2) | ADDED[added % 4]!);
    if (WEAVE[step % 4] === 'old') old += 1;
    else added += 1;
  }
  const closes = old % words.length === 0 && added % 4 === 0;
  return closes && new Set(longer).size === longer.length ? longer : null;
}

/** Most channels this search takes: kinds of turns grow faster than the words. */
const MOST_CHANNELS = 12;

/** The best code known without search: the reflected one, or one woven from a shorter code of this family. */
function startingCode(positions: number, steps: StepCounter): readonly number[] {
  const reflected = centredGray(positions);
  if (positions < 256 || positions % 16 !== 0 || positions % 3 === 0) return reflected;
  const inner = new StepCounter({ ...steps.limits, mostSteps: steps.left / 2 });
  const { words } = longestRunCode(positions / 4, tracksFor(positions / 4), inner);
  steps.spend(inner.done);
  const longer = woven(words!);
  return longer && shortestRun(longer) > shortestRun(reflected) ? longer : reflected;
}

/** The code with the longest shortest run that the steps allow. */
function longestRunCode(positions: number, channels: number, steps: StepCounter): LongestRuns {
  return searchLongRuns(startingCode(positions, steps), channels, steps);
}

/** Searches, and refuses a code that would leave a channel without a change. */
function build(positions: number, options: CodeOptions, limits: SearchLimits): CodeBuild {
  const steps = new StepCounter(limits);
  const channels = options.channels ?? tracksFor(positions);
  const { words, isProved } = longestRunCode(positions, channels, steps);
  if (words!.every((word) => word < 2 ** (channels - 1))) {
    throw new VanewrightError({
      code: isProved ? 'codes/no-such-code' : 'codes/search-ran-out',
      what: 'No code that uses all those channels and has longer marks than one of fewer channels was found.',
      where: 'disc.codeOptions.channels',
      got: `${channels} channels for ${positions} positions, ${steps.done} steps tried`,
      allowed: `${tracksFor(positions)} channels, or more steps`,
      fix: 'Remove disc.codeOptions.channels.',
    });
  }
  return { ...coarsestFirst(words!, channels), search: { steps: steps.done, provedBest: isProved } };
}

/**
 * Gray code whose shortest mark is as long as can be found; more channels than needed make it longer still.
 *
 * @source OEIS A096323 for what is known to be best; L. Goddyn, P. Gvozdjak 2003 for the weaving.
 * @check test/published/long-run-gray
 */
export const longRunGray: CodeFamily = {
  name: 'long-run-gray',
  title: 'long-run Gray',
  options: ['channels'],
  refusal: (positions, { channels }) => {
    // Every channel changes twice a turn at least, so half the positions is the most channels there can be.
    const most = Math.min(MOST_CHANNELS, Math.max(1, positions / 2));
    return (
      oddCountRefusal(positions) ??
      channelsRefusal(positions, channels, { least: tracksFor(positions), most, levels: 2 })
    );
  },
  build,
};
