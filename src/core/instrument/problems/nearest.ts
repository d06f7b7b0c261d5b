import { closest, distance } from 'fastest-levenshtein';

/** Letter case, spaces, `_` and `-` are no slips. */
function plain(name: string): string {
  return name.toLowerCase().replace(/[\s_-]/g, '');
}

/** Near is one slip in three characters. */
function isNear(one: string, other: string): boolean {
  return distance(one, other) <= Math.max(one.length, other.length) / 3;
}

/** The only name for which it holds, or `null`. */
function onlyOne(names: readonly string[], holds: (name: string) => boolean): string | null {
  const found = names.filter(holds);
  return found.length === 1 ? found[0]! : null;
}

/**
 * The known name a maker most likely meant, or `null` when none is near.
 *
 * A name is also found by its beginning, `web` for `webMm`, and one of several words by one of them, `grey` for
 * `reflected-gray`, as long as no other name has the same.
 */
export function nearest(written: string, known: readonly string[]): string | null {
  if (known.length === 0 || written.length > 100) return null;
  const name = plain(written);
  const best = closest(name, known.map(plain));
  if (isNear(name, best)) return known.find((candidate) => plain(candidate) === best) ?? null;
  const byStart = name.length < 3 ? null : onlyOne(known, (candidate) => plain(candidate).startsWith(name));
  return byStart ?? onlyOne(known, (candidate) => candidate.split('-').some((word) => isNear(name, word)));
}
