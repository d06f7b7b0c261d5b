import { VanewrightError } from '../../error/index.ts';
import type { Refusal } from '../family.ts';
import { POSITIONS_RANGE } from '../model.ts';
import { tracksFor } from '../wordTracks.ts';

/**
 * Refuses an odd count of a cyclic single-step code, with the reason in one sentence.
 *
 * @source derived: every channel returns to its start, so it changes an even number of times; one change a step.
 *   OEIS A290772, comment: "Cyclic Gray codes of odd lengths do not exist".
 */
export function oddCountRefusal(positions: number): Refusal | null {
  if (positions % 2 === 0) return null;
  const nearest = nearestOf([positions - 1, positions + 1]);
  return {
    code: 'codes/odd-count',
    what:
      'No code of two levels can change one channel at a time round an odd number of positions: ' +
      'every channel returns to its start, so it changes an even number of times, and the changes add up to the positions.',
    allowed: `an even number of positions, such as ${nearest}`,
    fix: `Set need.positions to ${nearest}.`,
  };
}

/** Counts a disc can have, as a maker reads them: `30 or 32`. */
export function nearestOf(counts: readonly number[]): string {
  const { least, most } = POSITIONS_RANGE;
  return counts.filter((count) => count >= least && count <= most).join(' or ');
}

/** The channels a code can use for a count, and how many marks they tell apart. */
export interface ChannelRange {
  readonly least: number;
  readonly most: number;
  readonly levels: 2 | 3;
}

/** Refuses a number of channels that is too small to tell the positions apart, or that the code cannot use. */
export function channelsRefusal(
  positions: number,
  channels: number | undefined,
  { least, most, levels }: ChannelRange,
): Refusal | null {
  if (channels === undefined || (Number.isInteger(channels) && channels >= least && channels <= most))
    return null;
  const about = {
    where: 'disc.codeOptions.channels',
    got: `${channels} channels for ${positions} positions`,
    allowed: least === most ? `${least} channels` : `a whole number of channels from ${least} to ${most}`,
  };
  const words = levels ** channels;
  if (Number.isInteger(channels) && channels > 0 && words < positions) {
    return {
      ...about,
      code: 'codes/too-few-channels',
      what: `${channels} channels of ${levels} levels show ${words} different words, so they tell at most ${words} positions apart.`,
      fix: `Set disc.codeOptions.channels to ${least}, or need.positions to ${Math.max(2, words)} or less.`,
    };
  }
  return {
    ...about,
    code: 'codes/channels-out-of-range',
    what: 'This code cannot use that many channels.',
    fix: `Set disc.codeOptions.channels to ${least}.`,
  };
}

/** Refuses any number of channels but the fewest that tell the positions apart with two levels. */
export function exactChannels(positions: number, channels: number | undefined): Refusal | null {
  const least = tracksFor(positions);
  return channelsRefusal(positions, channels, { least, most: least, levels: 2 });
}

/** Refuses marks longer than any code of so many channels can have. */
export function markRefusal(leastMarkSteps: number | undefined, channels: number): Refusal | null {
  const wanted = leastMarkSteps ?? 1;
  if (Number.isInteger(wanted) && wanted >= 1 && wanted <= channels) return null;
  return {
    code: 'codes/mark-too-long',
    what: `Of ${channels + 1} changes in a row two are on one channel, so no code of ${channels} channels has marks all longer than ${channels} steps.`,
    where: 'disc.codeOptions.leastMarkSteps',
    got: `${leastMarkSteps} steps`,
    allowed: `a whole number from 1 to ${channels} steps`,
    fix: 'Remove disc.codeOptions.leastMarkSteps to get the longest marks that can be found.',
  };
}

/** What to say when a search found no code with the marks asked for. */
export function searchFailed(request: {
  readonly positions: number;
  readonly channels: number;
  readonly leastMarkSteps: number | undefined;
  readonly steps: number;
  readonly isProved: boolean;
}): VanewrightError {
  const { positions, channels, leastMarkSteps, steps, isProved } = request;
  const marks = leastMarkSteps === undefined ? '' : ` with marks of ${leastMarkSteps} steps or more`;
  return new VanewrightError({
    code: isProved ? 'codes/no-such-code' : 'codes/search-ran-out',
    what: isProved
      ? 'Every arrangement of the words was tried, so it is proved that there is no such code.'
      : 'The search ran out of steps; whether there is such a code is not known.',
    where: leastMarkSteps === undefined ? 'need.positions' : 'disc.codeOptions.leastMarkSteps',
    got: `${positions} positions on ${channels} channels${marks}, ${steps} steps tried`,
    allowed: isProved
      ? 'another count, or shorter marks'
      : 'more steps or another seed; another count, or shorter marks',
    fix:
      leastMarkSteps === undefined
        ? 'Set disc.code to reflected-gray, which needs no search.'
        : 'Remove disc.codeOptions.leastMarkSteps to get the longest marks that can be found.',
  });
}
