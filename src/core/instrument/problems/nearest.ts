import { closest, distance } from 'fastest-levenshtein';

/** Letter case, spaces, `_` and `-` are no slips. */
function plain(name: string): string {
  return name.toLowerCase().replace(/[\s_-]/g, '');
}

/** Near is one slip in three characters. */
function isNear(one: string, other: string): boolean {
  return distance(one, other) <= Math.max(one.length, other.length) / 3;
}

/**
 * The known name a maker most likely meant, or `null` when none is near.
 *
 * A name of several words is also found by one of them, if no other name has it: `grey` is `reflected-gray`.
 */
export function nearest(written: string, known: readonly string[]): string | null {
  if (known.length === 0 || written.length > 100) return null;
  const name = plain(written);
  const best = closest(name, known.map(plain));
  if (isNear(name, best)) return known.find((candidate) => plain(candidate) === best) ?? null;
  const byWord = known.filter((candidate) => candidate.split('-').some((word) => isNear(name, word)));
  return byWord.length === 1 ? byWord[0]! : null;
}
