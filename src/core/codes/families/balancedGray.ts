import { seededRandom } from '../../units/index.ts';
import type { CodeFamily } from '../family.ts';
import { balanceCycle } from '../search/balanceCycle.ts';
import { StepCounter } from '../search/limits.ts';
import { coarsestFirst, tracksFor, withFaultsSeen } from '../wordTracks.ts';
import { centredGray } from './reflectedGray.ts';
import { exactChannels, oddCountRefusal, searchFailed } from './refusals.ts';

/**
 * Gray code whose tracks are equally busy: the numbers of changes differ by two at most.
 *
 * @source derived from the reflected code by swaps of parallel steps; see search/balanceCycle.ts
 * @check test/published/balanced-gray
 */
export const balancedGray: CodeFamily = {
  name: 'balanced-gray',
  title: 'balanced Gray',
  options: ['channels'],
  refusal: (positions, { channels }) => oddCountRefusal(positions) ?? exactChannels(positions, channels),
  build: (positions, _options, limits) => {
    const channels = tracksFor(positions);
    const steps = new StepCounter(limits);
    const words = balanceCycle(centredGray(positions), channels, seededRandom(limits.seed), steps);
    if (words)
      return {
        ...withFaultsSeen(coarsestFirst(words, channels), positions),
        search: { steps: steps.done, provedBest: true },
      };
    throw searchFailed({
      positions,
      channels,
      leastMarkSteps: undefined,
      steps: steps.done,
      isProved: false,
    });
  },
};
