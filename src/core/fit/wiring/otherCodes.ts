import { buildCode, codeProblems, DEFAULT_SEARCH, familyNames, type CodeTable } from '../../codes/index.ts';
import { VanewrightError } from '../../error/index.ts';
import { codeWalk, isSingleStep, type CodeWalk } from './codeWalk.ts';
import { bitCount } from './guesses.ts';
import { findWirings, type Walked, type Wiring } from './findWirings.ts';
import { explainedShare } from './rankWirings.ts';
import { followed, type FollowInput } from './followed.ts';

/** Another code that fits the recording better than the one in the file. */
export interface OtherCode {
  readonly code: CodeTable;
  readonly wiring: Wiring;
  /** Share of the recording it explains. [-] */
  readonly share: number;
}

/** Steps of a search that a code may cost here: a disc that somebody has made is found soon. [-] */
const SEARCH_STEPS = 200_000;

/** A code that explains less is not the disc's. [-]; own choice */
const LEAST_SHARE = 0.8;

function tryBuilding(name: string, positions: number): CodeTable | null {
  if (codeProblems(name, positions).length > 0) return null;
  try {
    return buildCode(name, positions, {}, { ...DEFAULT_SEARCH, mostSteps: SEARCH_STEPS });
  } catch (error) {
    if (error instanceof VanewrightError) return null;
    throw error;
  }
}

/**
 * The known code that explains the recording best, among those with as many channels as columns change.
 *
 * @param counts - Numbers of positions to try, the number of different words seen among them. [-]
 * @param live - Columns that change, as bits.
 * @param moves - Moves of the recording, for codes that change one channel at a time and for others.
 * @returns `null` when no code explains most of it.
 */
export function otherCode(
  counts: readonly number[],
  live: number,
  columns: number,
  moves: (single: boolean) => readonly Walked[],
  inputs: readonly FollowInput[],
): OtherCode | null {
  let best: OtherCode | null = null;
  for (const name of familyNames) {
    for (const positions of new Set(counts)) {
      const code = tryBuilding(name, positions);
      if (
        !code ||
        code.channels.length !== bitCount(live) ||
        code.tracks.some(({ levelCount }) => levelCount > 2)
      )
        continue;
      const found = fitting(codeWalk(code), moves, live, columns, inputs);
      if (found && found.share > LEAST_SHARE && standing(found) > (best ? standing(best) : 0))
        best = { code, ...found };
    }
  }
  return best;
}

/** Share explained, less a little for each mistake of the maker: some codes are one another rewired. */
function standing({ share, wiring }: Omit<OtherCode, 'code'>): number {
  const mistakes = wiring.channels.filter((wire, c) => wire?.column !== c || wire.inverted).length;
  return share - 0.002 * mistakes;
}

function fitting(
  walk: CodeWalk,
  moves: (single: boolean) => readonly Walked[],
  live: number,
  columns: number,
  inputs: readonly FollowInput[],
): Omit<OtherCode, 'code'> | null {
  const wirings = findWirings(walk, moves(isSingleStep(walk)), live, columns);
  const shares = wirings.map((wiring) => ({ wiring, share: explainedShare(followed(walk, wiring, inputs)) }));
  return shares.sort((a, b) => standing(b) - standing(a))[0] ?? null;
}
