import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import { buildCode, codeProblems, codeProperties, greyLevels } from '../../../src/core/codes/index.ts';
import { isCyclicSingleStep } from '../../support/codeChecker.ts';

/** How far all digits move at each step, the seam last. */
function moves(words: readonly string[]): number[] {
  return words.map((word, k) => {
    const next = words[(k + 1) % words.length]!;
    return [...word].reduce((sum, level, c) => sum + Math.abs(Number(level) - Number(next[c])), 0);
  });
}

/** Lengths of all cycles of a three by three grid, by walking every one of them. */
function gridCycleLengths(): number[] {
  const lengths = new Set<number>();
  const walk = (path: readonly number[]): void => {
    const [x, y] = [path.at(-1)! % 3, Math.floor(path.at(-1)! / 3)];
    const beside = [
      [x - 1, y],
      [x + 1, y],
      [x, y - 1],
      [x, y + 1],
    ].filter((at) => at.every((place) => place >= 0 && place < 3));
    for (const next of beside.map(([a, b]) => a! + 3 * b!)) {
      if (next === path[0] && path.length > 2) lengths.add(path.length);
      if (!path.includes(next)) walk([...path, next]);
    }
  };
  for (let start = 0; start < 9; start++) walk([start]);
  return [...lengths].sort((a, b) => a - b);
}

describe('three colours', () => {
  it('follow the printed modular code of two channels', () => {
    expect(buildCode('ternary-modular', 9).words.join(' ')).toBe('00 01 02 12 10 11 21 22 20');
  });

  it('change one channel a step at any count, odd ones too', () => {
    fc.assert(
      fc.property(fc.integer({ min: 2, max: 900 }), (positions) => {
        const { words, tracks } = buildCode('ternary-modular', positions);
        expect(isCyclicSingleStep(words)).toBe(true);
        expect(tracks.every((track) => track.levelCount === 3 && track.startsDeg.length > 1)).toBe(true);
        expect(3 ** words[0]!.length).toBeGreaterThanOrEqual(positions);
        expect(3 ** (words[0]!.length - 1)).toBeLessThan(positions);
      }),
      { seed: 77, numRuns: 80 },
    );
  });

  it('are told where they are read as greys: nine steps of 27 show a wrong position', () => {
    const table = buildCode('ternary-modular', 27);
    expect(moves(table.words).filter((move) => move === 2)).toHaveLength(9);
    expect(greyLevels(table)).toMatchObject({ passing: 9, misread: 9 });
    expect(greyLevels(table).worstErrorPositions).toBeGreaterThan(0);
    expect(codeProperties(table, 'unordered').worstErrorPositions).toBe(0);
    expect(codeProperties(table, 'ordered').worstErrorPositions).toBe(greyLevels(table).worstErrorPositions);
  });
});

describe('three grey levels', () => {
  it('move one level a step at any even count, but only at even ones', () => {
    for (let positions = 2; positions <= 728; positions += 2) {
      const table = buildCode('ternary-reflected', positions);
      expect(isCyclicSingleStep(table.words), String(positions)).toBe(true);
      expect(moves(table.words), String(positions)).toEqual(Array(positions).fill(1));
    }
    expect(gridCycleLengths()).toEqual([4, 6, 8]);
    for (const positions of [3, 5, 7, 9, 27]) {
      expect(codeProblems('ternary-reflected', positions)).toMatchObject([{ code: 'codes/odd-grey-levels' }]);
    }
  });

  it('never pass through a wrong level', () => {
    for (const positions of [8, 26, 80, 100]) {
      const table = buildCode('ternary-reflected', positions);
      expect(greyLevels(table)).toEqual({ passing: 0, misread: 0, worstErrorPositions: 0 });
    }
  });

  it('follow the printed reflected code, whose seam changes two channels', () => {
    const table = buildCode('ternary-reflected', 9, { seam: 'open' });
    expect(table.words.join(' ')).toBe('00 01 02 12 11 10 20 21 22');
    expect(codeProperties(table).multiStepBoundaries.map(({ changing }) => changing)).toEqual([[0, 1]]);
  });

  it('leave an odd count open at the seam alone', () => {
    for (const positions of [5, 7, 15, 25, 31, 99]) {
      const { words } = buildCode('ternary-reflected', positions, { seam: 'open' });
      expect(moves(words).slice(0, -1)).toEqual(Array(positions - 1).fill(1));
      expect(moves(words).at(-1)).toBe(2);
    }
  });
});

it('refuses 27 positions on two colour channels', () => {
  expect(codeProblems('ternary-modular', 27, { channels: 2 })).toMatchObject([
    { code: 'codes/too-few-channels', what: expect.stringContaining('at most 9 positions') as string },
  ]);
});
