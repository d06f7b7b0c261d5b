import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import { buildCode, codeProperties, codeTable, lightFaultsSeen, readCodeCsv } from './index.ts';
import { tracksFor, withFaultsSeen } from './wordTracks.ts';

it('counts channels exactly on either side of every power of two', () => {
  for (let n = 1; n <= 30; n++) {
    expect(tracksFor(2 ** n), `2^${n}`).toBe(n);
    expect(tracksFor(2 ** n + 1), `2^${n} + 1`).toBe(n + 1);
    if (n > 1) expect(tracksFor(2 ** n - 1), `2^${n} - 1`).toBe(n);
  }
  expect(tracksFor(1)).toBe(1);
});

describe('a dead lamp and full daylight', () => {
  it('are both recognised on five tracks of 24 positions with the longest marks', () => {
    const properties = codeProperties(buildCode('long-run-gray', 24));
    expect(lightFaultsSeen(properties, 1)).toEqual({ lampOff: true, flooded: true });
    expect(properties.tracks).toHaveLength(5);
    expect(properties.shortestRunSteps).toBe(4);
  });

  it('are recognised wherever inverting tracks can do it, and nothing else changes', () => {
    const everyWord = Array.from({ length: 16 }, (_, word) => word.toString(2).padStart(4, '0'));
    const opposite = (word: string): string => [...word].map((level) => (level === '0' ? '1' : '0')).join('');
    fc.assert(
      fc.property(fc.shuffledSubarray(everyWord, { minLength: 6, maxLength: 14 }), (words) => {
        fc.pre([0, 1, 2, 3].every((c) => new Set(words.map((word) => word[c])).size === 2));
        const table = readCodeCsv(words.join('\n'), 'own.csv');
        const before = codeProperties(table);
        const after = codeProperties(codeTable('own', words.length, withFaultsSeen(table, words.length)));
        const canBeSeen = everyWord.some((word) => !words.includes(word) && !words.includes(opposite(word)));
        expect(after.uniformWordIllegal.every((isIllegal) => isIllegal)).toBe(canBeSeen);
        expect(after.tracks).toEqual(before.tracks);
        expect(after.illegalWords).toBe(before.illegalWords);
      }),
      { seed: 82, numRuns: 100 },
    );
  });
});
