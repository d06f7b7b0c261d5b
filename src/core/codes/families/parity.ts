import type { Refusal } from '../family.ts';

/**
 * Refuses an odd count of a cyclic single-step code, with the reason in one sentence.
 *
 * @source derived: every channel returns to its start, so it changes an even number of times; one change a step.
 *   OEIS A290772, comment: "Cyclic Gray codes of odd lengths do not exist".
 */
export function oddCountRefusal(positions: number, most: number): Refusal | null {
  if (positions % 2 === 0) return null;
  const nearest = [positions - 1, positions + 1].filter((count) => count >= 2 && count <= most).join(' or ');
  return {
    code: 'codes/odd-count',
    what:
      'No code of two levels can change one channel at a time round an odd number of positions: ' +
      'every channel returns to its start, so it changes an even number of times, and the changes add up to the positions.',
    allowed: `an even number of positions, such as ${nearest}`,
    fix: `Set need.positions to ${nearest}, or disc.code to ternary-modular with three colours.`,
  };
}
