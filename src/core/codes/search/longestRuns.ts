import type { Random } from '../../units/index.ts';
import { searchOrbits, type OrbitProblem } from './orbitSearch.ts';
import type { StepCounter } from './limits.ts';

/** The code with the longest shortest run that a search found. */
export interface LongestRuns {
  /** Words of the whole turn, or `null` where none was found. */
  readonly words: readonly number[] | null;
  /** Its shortest run. [steps], 0 where none was found */
  readonly leastRun: number;
  /** Whether it is proved that no code of this kind has longer runs (or that there is none). */
  readonly isProved: boolean;
}

/** Shortest run of all channels round a circle of words that differ in one bit. [steps] */
export function shortestRun(words: readonly number[]): number {
  const lastChange = new Map<number, number>();
  let shortest = words.length;
  // Twice round, so that the run across the seam is measured too.
  for (let step = 0; step < 2 * words.length; step++) {
    const change = words[step % words.length]! ^ words[(step + 1) % words.length]!;
    const last = lastChange.get(change);
    if (last !== undefined) shortest = Math.min(shortest, step - last);
    lastChange.set(change, step);
  }
  return shortest;
}

/**
 * Searches codes that repeat under a turn, each with longer runs than the last, until one cannot be found.
 *
 * @param wanted - Shortest run that is enough: the search begins and ends there. Left out: as long as can be found. [steps]
 */
export function longestRuns(
  problem: Omit<OrbitProblem, 'leastRun'>,
  random: Random,
  steps: StepCounter,
  wanted?: number,
): LongestRuns {
  // A run longer than the channels is impossible: one of n + 1 changes in a row repeats a channel.
  const enough = wanted ?? problem.orbits.channels;
  let best: LongestRuns = { words: null, leastRun: 0, isProved: true };
  for (let leastRun = wanted ?? 1; leastRun <= enough; leastRun = best.leastRun + 1) {
    const end = searchOrbits({ ...problem, leastRun }, random, steps);
    if (end.end !== 'found') return { ...best, isProved: end.end === 'impossible' };
    best = { words: end.words, leastRun: shortestRun(end.words), isProved: false };
  }
  return { ...best, isProved: best.leastRun === problem.orbits.channels };
}
