import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import { buildCode, codeProblems } from '../../../src/core/codes/index.ts';
import { factsOf, isCyclicSingleStep } from '../../support/codeChecker.ts';

const QUICK = { seed: 1, mostSteps: 600_000 };
const LONGER = { seed: 1, mostSteps: 2_000_000 };

describe('the longest shortest mark', () => {
  it.each([
    [1, 1],
    [2, 2],
    [3, 2],
    [4, 2],
    [5, 4],
    [6, 4],
    [7, 5],
    [8, 6],
    [9, 6],
    [10, 8],
    [11, 8],
  ])('of %i channels and all their words is %i steps', (channels, gap) => {
    const { words } = buildCode('long-run-gray', 2 ** channels, {}, channels < 8 ? QUICK : LONGER);
    expect(isCyclicSingleStep(words)).toBe(true);
    expect(factsOf(words).shortestRun).toBe(gap);
  });

  it('is proved for up to five channels', () => {
    for (const channels of [2, 3, 4, 5]) {
      expect(buildCode('long-run-gray', 2 ** channels, {}, QUICK).search).toMatchObject({ provedBest: true });
    }
  });

  it('is never shorter than reflected Gray has, for any even count', () => {
    fc.assert(
      fc.property(fc.integer({ min: 2, max: 200 }), (half) => {
        const { words } = buildCode('long-run-gray', 2 * half, {}, { seed: 2, mostSteps: 60_000 });
        expect(isCyclicSingleStep(words)).toBe(true);
        expect(factsOf(words).shortestRun).toBeGreaterThanOrEqual(2);
      }),
      { seed: 76, numRuns: 25 },
    );
  });

  it('is seven steps for 360 positions on nine channels', () => {
    expect(factsOf(buildCode('long-run-gray', 360, {}, QUICK).words).shortestRun).toBe(7);
  });

  it('grows with more channels than needed', () => {
    const runs = [5, 6, 7, 8].map((channels) => {
      const { words } = buildCode('long-run-gray', 16, { channels }, QUICK);
      expect(isCyclicSingleStep(words)).toBe(true);
      expect(words[0]).toHaveLength(channels);
      return factsOf(words).shortestRun;
    });
    // Eight channels of sixteen positions: each window is half the turn.
    expect(runs).toEqual([...runs].sort((a, b) => a - b));
    expect(runs.at(-1)).toBe(8);
  });
});

it('has its coarsest track first, where the ring is shortest', () => {
  const { words } = buildCode('long-run-gray', 200, {}, QUICK);
  const runs = [...words[0]!].map((_, c) => factsOf(words.map((word) => word[c]!)).shortestRun);
  expect(runs).toEqual([...runs].sort((a, b) => b - a));
  expect(new Set(runs).size).toBeGreaterThan(1);
});

describe('a request it cannot serve', () => {
  it('refuses seven positions on two channels', () => {
    const [odd] = codeProblems('long-run-gray', 7, { channels: 2 });
    expect(odd).toMatchObject({ code: 'codes/odd-count' });
    const [few] = codeProblems('natural-binary', 7, { channels: 2 });
    expect(few).toMatchObject({
      code: 'codes/too-few-channels',
      what: '2 channels of 2 levels show 4 different words, so they tell at most 4 positions apart.',
      fix: 'Set disc.codeOptions.channels to 3, or need.positions to 4 or less.',
    });
  });

  it('refuses more channels than can change twice in a turn', () => {
    expect(codeProblems('long-run-gray', 12, { channels: 7 })).toMatchObject([
      { code: 'codes/channels-out-of-range', allowed: 'a whole number of channels from 4 to 6' },
    ]);
    expect(codeProblems('long-run-gray', 12, { channels: 6 })).toEqual([]);
  });

  it('refuses channels a fixed code has no use for', () => {
    expect(codeProblems('reflected-gray', 32, { channels: 6 })).toMatchObject([{ allowed: '5 channels' }]);
    expect(codeProblems('reflected-gray', 32, { channels: 5 })).toEqual([]);
  });
});
