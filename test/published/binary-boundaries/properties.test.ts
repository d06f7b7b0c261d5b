import { expect, it } from 'vitest';
import { buildCode, codeProperties } from '../../../src/core/codes/index.ts';

it.each([2, 3, 4, 5, 6, 8])(
  'misreads natural binary of %i tracks by the closed form at every boundary',
  (n) => {
    const positions = 2 ** n;
    const { boundaries, worstErrorPositions } = codeProperties(buildCode('natural-binary', positions));
    expect(boundaries).toHaveLength(positions);
    for (const { positionAfter, changing, halfTurned } of boundaries) {
      // The number of trailing zeros of the position after the boundary, and one more, change.
      const k = positionAfter === 0 ? n : Math.min(n, 32 - Math.clz32(positionAfter & -positionAfter));
      expect(changing).toHaveLength(k);
      expect(halfTurned.words).toBe(2 ** k);
      expect(halfTurned.worstErrorPositions).toBe(Math.max(0, 2 ** (k - 1) - 1));
    }
    expect(worstErrorPositions).toBe(positions / 2 - 1);
  },
);

it('is fifteen positions for the five tracks of the jetty', () => {
  expect(codeProperties(buildCode('natural-binary', 32)).worstErrorPositions).toBe(15);
  expect(codeProperties(buildCode('reflected-gray', 32)).worstErrorPositions).toBe(0);
});

it('has twice the edges and half the smallest mark of Gray', () => {
  const [binary, gray] = ['natural-binary', 'reflected-gray'].map((name) =>
    codeProperties(buildCode(name, 32)),
  );
  expect(binary!.tracks.map((track) => track.transitions / 2)).toEqual([1, 2, 4, 8, 16]);
  expect(gray!.tracks.map((track) => track.transitions / 2)).toEqual([1, 1, 2, 4, 8]);
  expect(binary!.shortestRunSteps).toBeCloseTo(1, 12);
  expect(gray!.shortestRunSteps).toBeCloseTo(2, 12);
});
