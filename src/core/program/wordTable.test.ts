import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { buildCode, codeTable, trackFromCells, type CodeTable, type Level } from '../codes/index.ts';
import { packedWord, wordTableFor, type WordTable } from './wordTable.ts';

/** What a controller does with a table: one look-up, or halving the list. */
function decode(table: WordTable, packed: number): number | null {
  if (table.kind === 'dense') return table.positions[packed]!;
  let from = 0;
  let to = table.words.length;
  while (from < to) {
    const middle = (from + to) >> 1;
    if (table.words[middle] === packed) return table.positions[middle]!;
    if (table.words[middle]! < packed) from = middle + 1;
    else to = middle;
  }
  return null;
}

/** A code of random words on its own tracks: any set of different words is one. */
const codes: fc.Arbitrary<CodeTable> = fc
  .integer({ min: 1, max: 10 })
  .chain((channels) =>
    fc.tuple(
      fc.constant(channels),
      fc.uniqueArray(fc.integer({ min: 0, max: 2 ** channels - 1 }), { minLength: 1, maxLength: 300 }),
    ),
  )
  .map(([channels, words]) =>
    codeTable('random', words.length, {
      tracks: Array.from({ length: channels }, (_, c) =>
        trackFromCells(words.map((word) => ((word >> (channels - 1 - c)) & 1) as Level)),
      ),
      channels: Array.from({ length: channels }, (_, track) => ({ track, angleDeg: 0 })),
    }),
  );

const tableOf = (code: CodeTable): WordTable => wordTableFor(code.words, code.channels.length);

describe('wordTableFor', () => {
  it('decodes every word of any code as the code table does, and refuses every other', () => {
    const kinds = new Set<string>();
    fc.assert(
      fc.property(codes, (code) => {
        const table = wordTableFor(code.words, code.channels.length);
        kinds.add(table.kind);
        for (let packed = 0; packed < 2 ** code.channels.length; packed++) {
          const word = packed.toString(2).padStart(code.channels.length, '0');
          expect(packedWord(word, 2)).toBe(packed);
          expect(decode(table, packed)).toBe(code.positionOf(word));
        }
      }),
      { seed: 20240611, numRuns: 60 },
    );
    expect([...kinds].sort()).toEqual(['dense', 'sorted']); // both were tried
  });

  it('is dense when all words are used, and sorted when few of many are', () => {
    expect(tableOf(buildCode('reflected-gray', 32)).kind).toBe('dense');
    expect(tableOf(buildCode('reflected-gray', 18)).kind).toBe('dense'); // 32 bytes against 18 * 3
    const half = [{ levelCount: 2 as const, startsDeg: [0, 180], levels: [1, 0] as const }];
    const ring = (n: number): CodeTable =>
      codeTable('half-ring', 2 * n, {
        tracks: half,
        channels: Array.from({ length: n }, (_, c) => ({ track: 0, angleDeg: (180 / n) * c })),
      });
    expect(tableOf(ring(5)).kind).toBe('sorted'); // 32 bytes against 10 * 3
    expect(tableOf(ring(4)).kind).toBe('dense'); // 16 bytes against 8 * 3
  });

  it('gives words of three levels two bits a channel, and finds each of them', () => {
    const { words, channels } = buildCode('ternary-modular', 27);
    const table = wordTableFor(words, channels.length, 3);
    expect(table.kind).toBe('dense'); // 64 bytes against 27 * 3
    for (let packed = 0; packed < 64; packed++) {
      const word = [packed >> 4, (packed >> 2) & 3, packed & 3].join('');
      expect(packedWord(word, 3)).toBe(packed);
      const position = words.indexOf(word);
      expect(decode(table, packed)).toBe(position < 0 ? null : position);
    }
  });
});
