import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import { problemsOf } from '../../../../test/support/problemsOf.ts';
import { buildCode, codeProperties } from '../index.ts';

/** Changes between neighbours of a circle of words, counted without our own boundary code. */
function changesRound(words: readonly string[]): number[] {
  return words.map((word, k) => {
    const next = words[(k + 1) % words.length]!;
    return [...word].filter((level, c) => level !== next[c]).length;
  });
}

describe('reflected Gray', () => {
  it('changes one track at a time round any even count', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 700 }), (half) => {
        const table = buildCode('reflected-gray', 2 * half);
        expect(new Set(table.words).size).toBe(2 * half);
        expect(new Set(changesRound(table.words))).toEqual(new Set([1]));
        expect(table.channels.length).toBe(Math.max(1, (2 * half - 1).toString(2).length));
      }),
      { seed: 71, numRuns: 60 },
    );
  });

  it('keeps every mark two steps long or longer beyond two positions', () => {
    for (const positions of [4, 6, 10, 36, 100, 360, 1000]) {
      const { shortestRunSteps } = codeProperties(buildCode('reflected-gray', positions));
      expect(shortestRunSteps, String(positions)).toBeGreaterThan(2 - 1e-9);
    }
  });

  it('reaches two and 4096 positions', () => {
    expect(buildCode('reflected-gray', 2).words).toEqual(['0', '1']);
    const most = buildCode('reflected-gray', 4096);
    expect(most.channels).toHaveLength(12);
    expect(new Set(changesRound(most.words))).toEqual(new Set([1]));
  });

  it.each([
    [3, '2 or 4'],
    [31, '30 or 32'],
    [4095, '4094 or 4096'],
  ])('refuses %i positions with the reason and the even counts beside it', (positions, nearest) => {
    const [problem, ...rest] = problemsOf(() => buildCode('reflected-gray', positions));
    expect(rest).toHaveLength(0);
    expect(problem).toMatchObject({
      code: 'codes/odd-count',
      where: 'need.positions',
      got: `${positions} positions`,
    });
    expect(problem!.what).toContain('an even number of times');
    expect(problem!.fix).toContain(nearest);
    // Every count and code that a fix names must work as the file stands, and three colours need another head.
    expect(problem!.fix).not.toContain('ternary');
  });
});

describe('natural binary', () => {
  it('counts in base two for any count', () => {
    fc.assert(
      fc.property(fc.integer({ min: 2, max: 1200 }), (positions) => {
        const { words } = buildCode('natural-binary', positions);
        expect(words.map((word) => parseInt(word, 2))).toEqual(
          Array.from({ length: positions }, (_, k) => k),
        );
      }),
      { seed: 72, numRuns: 60 },
    );
  });

  it('changes as many tracks at once as the carry runs', () => {
    fc.assert(
      fc.property(fc.integer({ min: 2, max: 400 }), (positions) => {
        const table = buildCode('natural-binary', positions);
        const { boundaries } = codeProperties(table);
        expect(boundaries.map(({ changing }) => changing.length).sort()).toEqual(
          changesRound(table.words).sort(),
        );
      }),
      { seed: 73, numRuns: 30 },
    );
  });
});

describe('a count no disc can have', () => {
  it.each([
    [4097, 4096],
    [1, 2],
    [0, 2],
    [2.5, 32],
    [Number.NaN, 32],
  ])('turns %d away and names %i', (positions, better) => {
    const [problem] = problemsOf(() => buildCode('reflected-gray', positions));
    expect(problem).toMatchObject({
      code: 'codes/count-out-of-range',
      allowed: 'a whole number from 2 to 4096',
    });
    expect(problem!.fix).toBe(`Set need.positions to ${better}.`);
  });

  it('turns an unknown code away and lists those there are', () => {
    const [problem] = problemsOf(() => buildCode('grey', 32));
    expect(problem).toMatchObject({ code: 'codes/unknown-family', got: 'grey' });
    expect(problem!.allowed).toContain('reflected-gray');
  });
});

describe('a seam left open', () => {
  it('lets reflected Gray have an odd count, with two changes at the seam', () => {
    for (const positions of [3, 5, 15, 23, 25, 99]) {
      const { words } = buildCode('reflected-gray', positions, { seam: 'open' });
      const changes = changesRound(words);
      expect(changes.slice(0, -1)).toEqual(Array(positions - 1).fill(1));
      expect(changes.at(-1)).toBe(2);
    }
  });
});
