import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import { seededRandom } from '../../units/index.ts';
import { buildCode, nameCode, readCodeCsv, type CodeTable } from '../index.ts';

const ownWords = (words: readonly string[]): CodeTable => readCodeCsv(words.join('\n'), 'own.csv');

/** The same code begun elsewhere, its channels reordered and their levels renamed, run backwards or not. */
function disguised(words: readonly string[], seed: number, isReversed: boolean): string[] {
  const random = seededRandom(seed);
  const start = Math.floor(random.uniform() * words.length);
  const order = [...words[0]!].map((_, c) => ({ c, key: random.uniform() })).sort((a, b) => a.key - b.key);
  const inverted = order.map(() => random.uniform() < 0.5);
  const levels = Math.max(...Array.from(words.join(''), Number)) + 1;
  const turned = words.map((_, k) => words[(start + k) % words.length]!);
  const renamed = turned.map((word) =>
    order.map(({ c }, i) => (inverted[i] ? String(levels - 1 - Number(word[c])) : word[c]!)).join(''),
  );
  return isReversed ? renamed.reverse() : renamed;
}

describe('a code by its words', () => {
  it('is known however it is begun, ordered, inverted and turned', () => {
    const known = fc.constantFrom(
      'reflected-gray',
      'natural-binary',
      'ternary-modular',
      'ternary-reflected',
      'switch-ring',
    );
    fc.assert(
      fc.property(
        known,
        fc.integer({ min: 5, max: 60 }),
        fc.nat(1000),
        fc.boolean(),
        (name, half, seed, isReversed) => {
          // At some even counts three colours are the words of three greys; at odd ones never.
          const { words } = buildCode(name, 2 * half + (name === 'ternary-modular' ? 1 : 0));
          expect(nameCode(ownWords(disguised(words, seed, isReversed))).family).toBe(name);
        },
      ),
      { seed: 81, numRuns: 60 },
    );
  });

  it('is told which way it runs where that makes a difference', () => {
    const { words } = buildCode('natural-binary', 10);
    expect(nameCode(ownWords(words)).title).toBe('natural binary');
    expect(nameCode(ownWords([...words].reverse())).title).toBe('natural binary, the other way round');
  });

  it('is not taken for a family after two of its words are swapped', () => {
    const words = [...buildCode('reflected-gray', 32).words];
    [words[3], words[20]] = [words[20]!, words[3]!];
    const name = nameCode(ownWords(words));
    expect(name).toMatchObject({ family: null, title: 'an own code that changes several channels at once' });
    expect(name.traits[0]).toMatch(/^several channels change at 4 of the boundaries/);
  });

  it('is described by its traits where no fixed family makes it', () => {
    const search = { seed: 1, mostSteps: 300_000 };
    const of = (family: string, positions: number): ReturnType<typeof nameCode> =>
      nameCode(ownWords(buildCode(family, positions, {}, search).words));
    expect(of('balanced-gray', 64).title).toBe('a balanced Gray code');
    expect(of('single-track-gray', 30)).toMatchObject({
      title: 'a single-track Gray code',
      traits: [
        'one channel changes at every boundary',
        'all channels can read one track',
        'equally busy channels',
        'marks of 3 steps or more',
      ],
    });
    expect(of('long-run-gray', 32).traits).toContain('marks of 4 steps or more');
    const window = buildCode('shift-register', 25, { clockTrack: false });
    expect(nameCode(ownWords(window.words)).title).toBe('a shift-register code');
  });

  it('is an open one for an odd count', () => {
    const { words } = buildCode('reflected-gray', 23, { seam: 'open' });
    expect(nameCode(ownWords(words))).toMatchObject({ family: 'reflected-gray' });
  });
});
