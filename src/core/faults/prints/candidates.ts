import type { CodeTable, Word } from '../../codes/index.ts';

/** One thing that may be wrong, and the word that each position then shows. */
export interface Candidate {
  readonly cause: 'nothing' | 'stuck' | 'tied' | 'swapped' | 'wrong-at-position';
  /** In words: `channel 3 always reads 1`. */
  readonly title: string;
  readonly channels: readonly number[];
  readonly positions: readonly number[];
  /** n = positions of the disc */
  readonly shown: readonly Word[];
}

const withLevel = (word: Word, channel: number, level: string): Word =>
  word.slice(0, channel) + level + word.slice(channel + 1);

/** Everything that is tried on this disc: each channel stuck, each two tied or swapped, each window or land turned round. */
export function candidates({ words, channels }: CodeTable): Candidate[] {
  const all = channels.map((_, channel) => channel);
  const pairs = all.flatMap((a) => all.filter((b) => b !== a).map((b) => [a, b] as const));
  const made = (
    cause: Candidate['cause'],
    title: string,
    where: readonly number[],
    show: (word: Word, position: number) => Word,
    positions: readonly number[] = [],
  ): Candidate => ({ cause, title, channels: where, positions, shown: words.map(show) });
  return [
    made('nothing', 'nothing is wrong', [], (word) => word),
    ...all.flatMap((c) =>
      ['0', '1'].map((level) =>
        made('stuck', `channel ${c} always reads ${level}`, [c], (word) => withLevel(word, c, level)),
      ),
    ),
    ...pairs.map(([a, b]) =>
      made('tied', `channel ${b} follows channel ${a}`, [b, a], (word) => withLevel(word, b, word[a]!)),
    ),
    ...pairs
      .filter(([a, b]) => a < b)
      .map(([a, b]) =>
        made('swapped', `channels ${a} and ${b} are swapped`, [a, b], (word) =>
          withLevel(withLevel(word, a, word[b]!), b, word[a]!),
        ),
      ),
    ...words.flatMap((_, p) =>
      all.map((c) =>
        made(
          'wrong-at-position',
          `channel ${c} reads wrong at position ${p}`,
          [c],
          (word, position) => (position === p ? withLevel(word, c, word[c] === '0' ? '1' : '0') : word),
          [p],
        ),
      ),
    ),
  ];
}
