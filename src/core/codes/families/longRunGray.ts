import type { CodeBuild, CodeFamily, CodeOptions } from '../family.ts';
import { StepCounter, type SearchLimits } from '../search/limits.ts';
import { shortestRun, type LongestRuns } from '../search/longestRuns.ts';
import { searchLongRuns } from '../search/longRunSearch.ts';
import { coarsestFirst, tracksFor, withFaultsSeen } from '../wordTracks.ts';
import { centredGray } from './reflectedGray.ts';
import { channelsRefusal, markRefusal, oddCountRefusal, searchFailed } from './refusals.ts';

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
const MOST_SEARCHED_CHANNELS = 12;

/** The best code known without search: the reflected one, or one woven from a shorter code of this family. */
function startingCode(positions: number, steps: StepCounter): readonly number[] {
  const reflected = centredGray(positions);
  if (positions < 256 || positions % 16 !== 0 || positions % 3 === 0) return reflected;
  const shorter = positions / 4;
  const { words } = longestRunCode(shorter, tracksFor(shorter), steps.part(steps.left / 2));
  const longer = woven(words!);
  return longer && shortestRun(longer) > shortestRun(reflected) ? longer : reflected;
}

/** The code with the longest shortest run that the steps allow, or with one that is enough. */
function longestRunCode(
  positions: number,
  channels: number,
  steps: StepCounter,
  wanted?: number,
): LongestRuns {
  return searchLongRuns(startingCode(positions, steps), channels, steps, wanted);
}

/** Searches, and refuses a code with shorter marks than asked for, or one that leaves a channel without a change. */
function build(positions: number, options: CodeOptions, limits: SearchLimits): CodeBuild {
  const steps = new StepCounter(limits);
  const { leastMarkSteps } = options;
  const channels = options.channels ?? tracksFor(positions);
  const { words, leastRun, isProved } = longestRunCode(positions, channels, steps, leastMarkSteps);
  const isIdle = words!.every((word) => word < 2 ** (channels - 1));
  if (isIdle || leastRun < (leastMarkSteps ?? 1)) {
    throw searchFailed({ positions, channels, leastMarkSteps, steps: steps.done, isProved });
  }
  return {
    ...withFaultsSeen(coarsestFirst(words!, channels), positions),
    search: { steps: steps.done, provedBest: isProved },
  };
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
  options: ['channels', 'leastMarkSteps'],
  refusal: (positions, { channels, leastMarkSteps }) => {
    // Every channel changes twice a turn at least, so half the positions is the most channels there can be.
    const most = Math.min(MOST_SEARCHED_CHANNELS, Math.max(1, positions / 2));
    return (
      oddCountRefusal(positions) ??
      channelsRefusal(positions, channels, { least: tracksFor(positions), most, levels: 2 }) ??
      markRefusal(leastMarkSteps, channels ?? tracksFor(positions))
    );
  },
  build,
};
