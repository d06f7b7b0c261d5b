import { seededRandom, type Degrees } from '../../units/index.ts';
import type { CodeBuild, CodeFamily, CodeOptions, Refusal } from '../family.ts';
import type { Level } from '../model.ts';
import { invertingRotation, rotation, turnOrbits } from '../search/cubeTurn.ts';
import { StepCounter, type SearchLimits } from '../search/limits.ts';
import { longestRuns } from '../search/longestRuns.ts';
import { trackFromCells } from '../track.ts';
import { markRefusal, searchFailed } from './refusals.ts';
import {
  fewestChannels,
  isFeasible,
  MOST_SEARCHED_CHANNELS,
  necklaceLength,
  nearestCounts,
  selfOppositeLength,
} from './singleTrackCounts.ts';

/** Why no code of that count and those channels can exist, in one sentence, or null. */
function theorem(channels: number, positions: number): string | null {
  if (positions % (2 * channels) !== 0) {
    return (
      `All ${channels} channels see the same track, so the track changes ${positions}/${channels} times a turn; ` +
      `it returns to its start, so that number is even, and the positions are a multiple of ${2 * channels}.`
    );
  }
  const most = 2 * channels * Math.floor(2 ** channels / (2 * channels));
  if (positions > most) {
    return `${channels} channels have ${2 ** channels} words, and the positions are a multiple of ${2 * channels}, so ${most} is the most.`;
  }
  if (channels > 2 && positions === 2 ** channels) {
    return `No single track shows all ${positions} words of ${channels} channels when ${channels} is a power of two.`;
  }
  return null;
}

/** What the places of the heads demand beyond the theorem. */
function placementReason(placement: CodeOptions['headPlacement']): string {
  const alternate = 'an even and an odd number of lit channels take turns';
  if (placement === 'half-turn') {
    return `With n heads within half a turn the track is its own opposite half a turn on, and ${alternate}, so the positions are an odd multiple of 2n, up to the words there are.`;
  }
  if (placement === 'even') {
    return `With n heads evenly round the turn ${alternate} on the necklaces of n beads, so the positions are a multiple of 2n, up to the scarcer of the two.`;
  }
  return `With n heads at equal steps ${alternate}, so the positions are a multiple of 2n, up to the words there are, for some n up to ${MOST_SEARCHED_CHANNELS}.`;
}

/** Why the count cannot be had with the channels and heads asked for. */
function refusal(
  positions: number,
  { channels, headPlacement, leastMarkSteps }: CodeOptions,
): Refusal | null {
  if (
    channels !== undefined &&
    (!Number.isInteger(channels) || channels < 1 || channels > MOST_SEARCHED_CHANNELS)
  ) {
    return {
      code: 'codes/channels-out-of-range',
      what: 'A single-track code cannot have that many channels.',
      where: 'disc.codeOptions.channels',
      got: `${channels} channels`,
      allowed: `a whole number from 1 to ${MOST_SEARCHED_CHANNELS}`,
      fix: 'Remove disc.codeOptions.channels to get the fewest that serve.',
    };
  }
  const isPossible =
    channels === undefined
      ? fewestChannels(positions, headPlacement) !== null
      : isFeasible(channels, positions, headPlacement);
  if (isPossible) return markRefusal(leastMarkSteps, channels ?? fewestChannels(positions, headPlacement)!);
  const counts = nearestCounts(positions, channels, headPlacement).join(' or ');
  const fewest = channels === undefined ? null : fewestChannels(positions, headPlacement);
  return {
    code: 'codes/no-single-track',
    what: (channels === undefined ? null : theorem(channels, positions)) ?? placementReason(headPlacement),
    allowed: counts === '' ? 'another number of channels' : `${counts} positions`,
    fix: fewest === null ? `Set need.positions to ${counts}.` : `Set disc.codeOptions.channels to ${fewest}.`,
  };
}

/** One of the ways to place the heads, ready to be searched. */
interface Layout {
  readonly orbits: ReturnType<typeof turnOrbits>;
  readonly length: number;
  readonly angleDeg: (channel: number) => Degrees;
}

/** The layouts that parity allows for a request. */
function layouts(channels: number, positions: number, headPlacement: CodeOptions['headPlacement']): Layout[] {
  const found: Layout[] = [];
  const evenly = (channel: number): Degrees => (channel * 360) / channels;
  const plain = necklaceLength(channels, positions);
  if (plain !== null && headPlacement !== 'half-turn') {
    found.push({ orbits: turnOrbits(rotation(channels)), length: plain, angleDeg: evenly });
  }
  const opposite = selfOppositeLength(channels, positions);
  if (opposite !== null && (headPlacement !== 'even' || channels % 2 === 1)) {
    const closely = (channel: number): Degrees => (channel * 180) / channels;
    const angleDeg = headPlacement === 'even' ? evenly : closely;
    found.push({ orbits: turnOrbits(invertingRotation(channels)), length: opposite, angleDeg });
  }
  return found;
}

/** Searches every layout and keeps the one with the longest marks. */
function build(positions: number, options: CodeOptions, limits: SearchLimits): CodeBuild {
  const channels = options.channels ?? fewestChannels(positions, options.headPlacement)!;
  const steps = new StepCounter(limits);
  const random = seededRandom(limits.seed);
  const open = layouts(channels, positions, options.headPlacement);
  const { leastMarkSteps } = options;
  const ends = open.map((layout, i) => ({
    layout,
    ...longestRuns(layout, random, steps.part(steps.left / (open.length - i)), leastMarkSteps),
  }));
  const found = ends.filter(({ words }) => words !== null).sort((a, b) => b.leastRun - a.leastRun)[0];
  const isProved = ends.every((end) => end.isProved);
  if (!found) throw searchFailed({ positions, channels, leastMarkSteps, steps: steps.done, isProved });
  const cells = found.words!.map((word) => (word & 1) as Level);
  return {
    tracks: [trackFromCells(cells)],
    channels: Array.from({ length: channels }, (_, c) => ({ track: 0, angleDeg: found.layout.angleDeg(c) })),
    search: { steps: steps.done, provedBest: isProved },
  };
}

/**
 * One track seen by all channels from different angles, one changing at a time.
 *
 * The heads stand evenly round the turn (the words fall into necklaces) or within half a turn (the track is its
 * own opposite after half a turn). Among the codes of a count, the one with the longest shortest mark is sought.
 *
 * @source A. P. Hiltgen, K. G. Paterson, M. Brandestini, Single-track Gray codes, IEEE Trans. Inf. Theory 42 (1996) 1555.
 * @source T. Etzion, K. G. Paterson, Near optimal single-track Gray codes, IEEE Trans. Inf. Theory 42 (1996) 779.
 * @check test/published/single-track-gray
 */
export const singleTrackGray: CodeFamily = {
  name: 'single-track-gray',
  title: 'single-track Gray',
  options: ['channels', 'headPlacement', 'leastMarkSteps'],
  refusal,
  build,
};
