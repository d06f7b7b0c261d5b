import { positionsApart, type CodeTable, type Word } from '../../codes/index.ts';
import { candidates, type Candidate } from './candidates.ts';
import { countedSteps, type CountedStep, type WordSteps } from './wordSteps.ts';

/** A cause with how well it explains what was seen. */
export interface RankedCause extends Omit<Candidate, 'shown'> {
  /** Natural logarithm of its likelihood over that of the best one: 0 for the best. [-] */
  readonly logOdds: number;
  /** Share of the odds among everything that was tried, steps side by side being taken as one in 50. [-], 0..1 */
  readonly probability: number;
}

/** Positions up to which every pair is tried; finer discs would take minutes. [-] */
const POSITIONS_MOST = 64;
/** Steps that are worth one independent one: a vane dwells for many samples in one weather. [-]; own choice */
const DEPENDENT = 50;
/** Part of all steps that may be anything: noise, gusts, lines lost. [-] */
const NOISE = 0.002;
/** Rounds that bring where the vane was to rest. [-] */
const ROUNDS = 30;

/** How far the vane goes from sample to sample, by the shortest way; from the steps of the code as it should be. [-] */
function kernelOf(steps: readonly CountedStep[], { positions, positionOf }: CodeTable): number[] {
  const kernel = Array.from({ length: (positions >> 1) + 1 }, (_, apart) => 0.5 ** apart);
  for (const { from, to, count } of steps) {
    const [a, b] = [positionOf(from), positionOf(to)];
    if (a === null || b === null) continue;
    // What leaps far may be the fault itself and teaches nothing.
    const apart = positionsApart(a, b, positions);
    if (apart <= positions / 8) kernel[apart]! += count;
  }
  const total = kernel.reduce(
    (sum, value, apart) => sum + value * (apart === 0 || 2 * apart === positions ? 1 : 2),
    0,
  );
  // Never more likely further off: a walk has no favourite leap.
  let most = Infinity;
  return kernel.map((value, apart) => {
    most = Math.min(most, value / total / (apart === 0 ? 1 : 2));
    return most;
  });
}

/** Where the vane was, so that the candidate shows the words as often as they came; smooth round the circle. [-] */
function whereabouts(shown: readonly Word[], seen: ReadonlyMap<Word, number>, total: number): number[] {
  const n = shown.length;
  let where = shown.map(() => 1 / n);
  for (let round = 0; round < ROUNDS; round++) {
    const sums = new Map<Word, number>();
    for (const [position, word] of shown.entries()) sums.set(word, (sums.get(word) ?? 0) + where[position]!);
    const next = where.map((share, position) => {
      const word = shown[position]!;
      return (share / sums.get(word)!) * ((seen.get(word) ?? 0) / total);
    });
    where = next.map(
      (share, i) => 0.25 * next[(i + n - 1) % n]! + 0.5 * share + 0.25 * next[(i + 1) % n]! + 1e-9,
    );
  }
  return where;
}

function logLikelihood(
  { shown }: Candidate,
  steps: readonly CountedStep[],
  seen: ReadonlyMap<Word, number>,
  kernel: readonly number[],
): number {
  const total = steps.reduce((sum, { count }) => sum + count, 0);
  const where = whereabouts(shown, seen, total);
  const at = new Map<Word, number[]>();
  for (const [position, word] of shown.entries()) at.set(word, [...(at.get(word) ?? []), position]);
  const anything = NOISE / (shown.length + 1) ** 2;
  return steps.reduce((sum, { from, to, count }) => {
    let chance = anything;
    for (const p of at.get(from) ?? [])
      for (const q of at.get(to) ?? [])
        chance += (1 - NOISE) * where[p]! * kernel[positionsApart(p, q, shown.length)]!;
    return sum + count * Math.log(chance);
  }, 0);
}

/**
 * Ranks what may be wrong with this very disc by how well each cause explains the words of a month and their order.
 *
 * @param steps - Of a stretch in which nothing changed; a month tells most.
 * @param code - Of the disc.
 * @param most - How many are given. [-]
 * @returns Likeliest first; empty where no words were logged, or for more than 64 positions.
 * @source derived: likelihood of the pairs of words side by side, the vane walking by its own usual steps.
 * @check src/core/faults/prints/rankCauses.test.ts
 */
export function rankCauses(steps: WordSteps, code: CodeTable, most = 5): RankedCause[] {
  const counted = countedSteps(steps, code);
  if (counted.length === 0 || code.positions > POSITIONS_MOST) return [];
  const seen = new Map<Word, number>();
  for (const { from, count } of counted) seen.set(from, (seen.get(from) ?? 0) + count);
  const kernel = kernelOf(counted, code);
  const tried = candidates(code);
  // Among hundreds of causes one fits a sound disc a little better by luck: a fault must beat that too.
  const luck = DEPENDENT * Math.log(tried.length);
  const ranked = tried
    .map((candidate) => ({
      candidate,
      log: logLikelihood(candidate, counted, seen, kernel) - (candidate.cause === 'nothing' ? 0 : luck),
    }))
    .sort((a, b) => b.log - a.log);
  const best = ranked[0]!.log;
  const odds = ranked.map(({ log }) => Math.exp((log - best) / DEPENDENT));
  const all = odds.reduce((a, b) => a + b, 0);
  return ranked.slice(0, most).map(({ candidate, log }, i) => {
    const { cause, title, channels, positions } = candidate;
    return { cause, title, channels, positions, logOdds: log - best, probability: odds[i]! / all };
  });
}
