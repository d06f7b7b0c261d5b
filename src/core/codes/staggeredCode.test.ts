import { describe, expect, it } from 'vitest';
import { problemsOf } from '../../../test/support/problemsOf.ts';
import { buildCode, positionCentreDeg, staggeredCode, wordAt } from './index.ts';

const inOrder = (count: number) => Array.from({ length: count }, (_, channel) => channel);

describe('a staggered code', () => {
  it.each(['reflected-gray', 'natural-binary'])('shows every word of %s where it was', (family) => {
    const code = buildCode(family, 32);
    const staggered = staggeredCode(code, [3, 1, 0, 2, 4], 13);
    const words = inOrder(32).map((position) => wordAt(staggered, positionCentreDeg(position, 32)));
    expect(words).toEqual(code.words);
    // Away from the middle too: a hair before and after every edge between two positions.
    for (const angle of inOrder(32).flatMap((edge) => [edge * 11.25 - 0.01, edge * 11.25 + 0.01])) {
      expect(wordAt(staggered, angle)).toBe(wordAt(code, angle));
    }
  });

  it('stands alternately on both sides of the head line, counted by radius', () => {
    const { channels } = staggeredCode(buildCode('reflected-gray', 32), [3, 1, 0, 2, 4], 13);
    expect(channels.map(({ angleDeg }) => angleDeg)).toEqual([353.5, 6.5, 6.5, 353.5, 353.5]);
  });

  it('keeps the starts of its runs in order from the index mark', () => {
    for (const { startsDeg } of staggeredCode(buildCode('reflected-gray', 32), inOrder(5), 77).tracks) {
      expect([...startsDeg].sort((a, b) => a - b)).toEqual(startsDeg);
      expect(Math.min(...startsDeg)).toBeGreaterThanOrEqual(0);
      expect(Math.max(...startsDeg)).toBeLessThan(360);
    }
  });

  it('is the code itself without a stagger', () => {
    const code = buildCode('reflected-gray', 32);
    expect(staggeredCode(code, inOrder(5), 0)).toBe(code);
  });

  it('is refused where channels share a track', () => {
    const code = buildCode('single-track-gray', 30);
    expect(problemsOf(() => staggeredCode(code, inOrder(code.channels.length), 10))).toMatchObject([
      { code: 'codes/stagger-shares-track' },
    ]);
  });
});
