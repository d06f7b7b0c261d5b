import type { Problem } from '../../error/index.ts';

/** A problem and where it stands, so that problems can be told from top to bottom. */
export interface PlacedProblem {
  /** [characters from the start] */
  readonly offset: number;
  readonly problem: Problem;
}

/** Most problems that are told in full; the number of the others is told. */
const MOST_PROBLEMS = 50;

/** Problems from top to bottom, the last saying how many more there are. */
export function inReadingOrder(placed: readonly PlacedProblem[]): readonly Problem[] {
  const problems = [...placed].sort((a, b) => a.offset - b.offset).map(({ problem }) => problem);
  const more = problems.length - MOST_PROBLEMS;
  if (more <= 0) return problems;
  return [
    ...problems.slice(0, MOST_PROBLEMS),
    {
      code: 'instrument/more-problems',
      what: `There are ${more} more problems further down.`,
      where: problems[MOST_PROBLEMS]!.where,
      got: `${problems.length} problems`,
      allowed: 'none',
      fix: 'Mend those above and run again.',
    },
  ];
}
