import { seededRandom, type Random } from '../../units/index.ts';
import { turnOrbits, turnsDividing, type TurnOrbits } from './cubeTurn.ts';
import type { StepCounter } from './limits.ts';
import { shortestRun, type LongestRuns } from './longestRuns.ts';
import { searchOrbits } from './orbitSearch.ts';

/** Steps that the kind of turn of longest order gets in the first round, the others in proportion; each round gives four times as many. */
const FIRST_ROUND_STEPS = 5000;

/** One kind of turn that codes may repeat under. */
interface Kind {
  readonly orbits: TurnOrbits;
  readonly length: number;
  /** Proved to have no code with the runs wanted. */
  isBarren: boolean;
}

/** The kinds of turn with room for a code of that many positions. */
function kindsFor(positions: number, channels: number): Kind[] {
  return turnsDividing(positions, channels).flatMap((turn) => {
    const orbits = turnOrbits(turn);
    const length = positions / orbits.order;
    return orbits.count < length ? [] : [{ orbits, length, isBarren: false }];
  });
}

/** Asks every kind in rounds, each longer than the last, for a code with runs as long as wanted. */
function findRuns(
  kinds: readonly Kind[],
  leastRun: number,
  random: Random,
  steps: StepCounter,
): readonly number[] | null {
  const longestOrder = Math.max(...kinds.map((kind) => kind.orbits.order));
  for (let round = FIRST_ROUND_STEPS; ; round *= 4) {
    const open = kinds.filter((kind) => !kind.isBarren);
    if (open.length === 0) return null;
    for (const kind of open) {
      if (steps.left <= 0) return null;
      const { orbits, length } = kind;
      // A turn of long order leaves a short search, which is the likelier to end.
      const share = Math.ceil((round * orbits.order) / longestOrder);
      const end = searchOrbits({ orbits, length, leastRun }, random, steps.part(share));
      if (end.end === 'found') return end.words;
      // A kind without codes of these runs has none with longer ones.
      kind.isBarren = end.end === 'impossible';
    }
  }
}

/**
 * Searches the cyclic single-step code whose shortest run is longest, among codes that repeat themselves turned.
 *
 * @param known - A code to improve on. n = positions
 * @param wanted - Shortest run that is enough: nothing longer is looked for. Left out: as long as can be found. [steps]
 * @returns `known` where nothing better was found. Proved best only when codes that do not repeat were tried too.
 * @source derived: the quotient of the cube by a turn is searched, for every kind of turn.
 * @check test/published/long-run-gray
 */
export function searchLongRuns(
  known: readonly number[],
  channels: number,
  steps: StepCounter,
  wanted?: number,
): LongestRuns {
  const random = seededRandom(steps.limits.seed);
  const kinds = kindsFor(known.length, channels);
  let best = { words: known, leastRun: shortestRun(known) };
  while (best.leastRun < (wanted ?? channels)) {
    const words = findRuns(kinds, wanted ?? best.leastRun + 1, random, steps);
    // The turn that moves nothing stands for every code there is.
    const isEveryCode = kinds.some((kind) => kind.orbits.order === 1 && kind.isBarren);
    if (!words) return { ...best, isProved: isEveryCode };
    best = { words, leastRun: shortestRun(words) };
  }
  return { ...best, isProved: best.leastRun === channels };
}
