import type { CodeTable } from '../codeTable.ts';
import { boundaries, halfTurned } from './boundaries.ts';

/** What happens when the three levels of a code are greys, so that 0 and 2 meet through 1. */
export interface GreyLevels {
  /** Boundaries at which a channel passes through a level that belongs to neither side. [-] */
  readonly passing: number;
  /** Of those, boundaries at which that shows a word of the code: a wrong position, and nothing tells it. [-] */
  readonly misread: number;
  /** Farthest such a position lies from the nearer true neighbour. [positions] */
  readonly worstErrorPositions: number;
}

/**
 * Whether a code may be read as grey levels, or needs three colours of which none lies in a blend of the other two.
 *
 * @returns All zero for two levels, and for codes that move one level at a time.
 * @source derived: two thresholds make two on-off channels of one grey channel, and both change on the way from 0 to 2.
 * @check test/published/ternary
 */
export function greyLevels(table: CodeTable): GreyLevels {
  const found = boundaries(table).map((boundary) => {
    const colours = halfTurned(table, boundary, 'unordered');
    const greys = halfTurned(table, boundary, 'ordered');
    const wrong = greys.positions.length > colours.positions.length;
    return { passing: greys.words > colours.words, wrong, error: wrong ? greys.worstErrorPositions : 0 };
  });
  return {
    passing: found.filter(({ passing }) => passing).length,
    misread: found.filter(({ wrong }) => wrong).length,
    worstErrorPositions: Math.max(0, ...found.map(({ error }) => error)),
  };
}
