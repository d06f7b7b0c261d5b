/**
 * A second opinion on a list of words, written apart from src/core/codes and sharing nothing with it.
 *
 * Everything is read off the words themselves, round the circle.
 */
export interface WordFacts {
  readonly distinct: boolean;
  /** Channels that change after each position, the seam last. n = words */
  readonly changes: readonly number[];
  /** Changes of each channel in one turn. n = channels */
  readonly counts: readonly number[];
  /** Shortest run of all channels. [steps] */
  readonly shortestRun: number;
  /** Every channel reads the same cyclic pattern, only turned. */
  readonly oneTrack: boolean;
}

/** Shortest distance between two neighbouring changes of a cyclic string. */
function shortestRunOf(ring: string): number {
  const twice = ring + ring;
  const runs = twice.match(/(.)\1*/g) ?? [];
  return Math.min(ring.length, ...runs.slice(1, -1).map((run) => run.length));
}

export function factsOf(words: readonly string[]): WordFacts {
  const channels = words[0]!.length;
  const rings = Array.from({ length: channels }, (_, c) => words.map((word) => word[c]!).join(''));
  const differ = (a: string, b: string): number =>
    [...a].reduce((sum, level, c) => sum + (level === b[c] ? 0 : 1), 0);
  return {
    distinct: new Set(words).size === words.length,
    changes: words.map((word, k) => differ(word, words[(k + 1) % words.length]!)),
    counts: rings.map((ring) => [...ring].filter((level, k) => level !== ring[(k + 1) % ring.length]).length),
    shortestRun: Math.min(...rings.map(shortestRunOf)),
    oneTrack: rings.every((ring) => (rings[0]! + rings[0]!).includes(ring)),
  };
}

/** Distinct words, one change a step, the seam included. */
export function isCyclicSingleStep(words: readonly string[]): boolean {
  const { distinct, changes } = factsOf(words);
  return distinct && changes.every((count) => count === 1);
}
