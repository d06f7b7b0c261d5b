import { expect, it } from 'vitest';
import fc from 'fast-check';
import { buildCode, codeProblems, codeProperties } from '../../../src/core/codes/index.ts';
import { factsOf, isCyclicSingleStep } from '../../support/codeChecker.ts';

const sorted = (counts: readonly number[]): number[] => [...counts].sort((a, b) => a - b);
const times = (count: number, times: number): number[] => Array.from({ length: times }, () => count);

it.each([
  [4, times(4, 4)],
  [5, [...times(6, 4), 8]],
  [6, [...times(10, 4), 12, 12]],
  [7, [...times(18, 6), 20]],
  [8, times(32, 8)],
  [9, [...times(56, 5), ...times(58, 4)]],
  [10, [...times(102, 8), 104, 104]],
  [12, [...times(340, 4), ...times(342, 8)]],
])('makes the tracks of %i channels equally busy', (n, counts) => {
  const { words } = buildCode('balanced-gray', 2 ** n);
  expect(isCyclicSingleStep(words)).toBe(true);
  expect(sorted(factsOf(words).counts)).toEqual(counts);
});

it('does so for any even count, and tells the same by its own properties', () => {
  fc.assert(
    fc.property(fc.integer({ min: 1, max: 500 }), fc.integer({ min: 0, max: 1000 }), (half, seed) => {
      const table = buildCode('balanced-gray', 2 * half, {}, { seed, mostSteps: 400_000 });
      const { counts } = factsOf(table.words);
      expect(isCyclicSingleStep(table.words)).toBe(true);
      expect(Math.max(...counts) - Math.min(...counts)).toBeLessThanOrEqual(2);
      expect(codeProperties(table).tracks.map((track) => track.transitions)).toEqual(counts);
    }),
    { seed: 75, numRuns: 40 },
  );
});

it('refuses an odd count as every cyclic single-step code must', () => {
  expect(codeProblems('balanced-gray', 33)).toMatchObject([{ code: 'codes/odd-count' }]);
});

it('says when its steps ran out', () => {
  expect(() => buildCode('balanced-gray', 4096, {}, { seed: 1, mostSteps: 50 })).toThrow(
    'codes/search-ran-out',
  );
});
