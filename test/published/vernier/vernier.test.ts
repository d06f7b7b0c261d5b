import { describe, expect, it } from 'vitest';
import {
  buildCode,
  codeProblems,
  codeProperties,
  vernierTolerancePeriods,
} from '../../../src/core/codes/index.ts';
import { factsOf, isCyclicSingleStep } from '../../support/codeChecker.ts';

/** Period of the first scale told from two phases with errors, or -1 where the phases fit none. */
function periodTold(p: number, q: number, turn: number, errorP: number, errorQ: number): number {
  const wrap = (x: number): number => x - Math.floor(x);
  const [phaseP, phaseQ] = [wrap(p * turn) + errorP, wrap(q * turn) + errorQ];
  const told = Math.round(p * phaseQ - q * phaseP);
  for (let k = 0; k < p; k++) for (let l = 0; l < q; l++) if (q * k - p * l === told) return k;
  return -1;
}

describe('how much error two phases bear', () => {
  it.each([
    [8, 7, 0.0333],
    [16, 15, 0.016129],
    [32, 31, 0.00794],
  ])('is for %i and %i windows %d of a period', (p, q, limit) => {
    const tolerance = vernierTolerancePeriods(p, q);
    expect(tolerance).toBeCloseTo(limit, 4);
    let [right, wrong] = [0, 0];
    for (let i = 0; i < 400; i++) {
      const turn = (i + 0.5) / 400;
      const period = Math.floor(p * turn);
      // The worst case: errors of opposite sign, just below the limit and just above it.
      if (periodTold(p, q, turn, -0.98 * tolerance, 0.98 * tolerance) === period) right += 1;
      if (periodTold(p, q, turn, -1.05 * tolerance, 1.05 * tolerance) !== period) wrong += 1;
    }
    expect([right, wrong]).toEqual([400, 400]);
  });
});

/** Fewest channels of any two combs for a count, by trying all of them. */
function fewestChannels(positions: number): number {
  let least = Infinity;
  for (let p = 1; p <= positions; p++) {
    if (positions % (4 * p) !== 0) continue;
    for (let q = 1; q < p; q++) {
      const repeats = positions / (4 * p * q);
      const shares = Array.from({ length: q - 1 }, (_, i) => i + 2).some((d) => p % d === 0 && q % d === 0);
      if (Number.isInteger(repeats) && !shares) least = Math.min(least, (p + q) * repeats);
    }
  }
  return least;
}

describe('two combs', () => {
  it('change one channel a step at every multiple of four, and need two tracks only', () => {
    for (let positions = 8; positions <= 400; positions += 4) {
      if (fewestChannels(positions) > 64) {
        expect(codeProblems('vernier', positions), String(positions)).toMatchObject([
          { code: 'codes/no-vernier' },
        ]);
        continue;
      }
      const { words, tracks } = buildCode('vernier', positions);
      expect(isCyclicSingleStep(words), String(positions)).toBe(true);
      expect(tracks).toHaveLength(2);
    }
  });

  it.each([
    [24, 3, 2, 5, 4],
    [48, 4, 3, 7, 6],
    [80, 5, 4, 9, 8],
    [224, 8, 7, 15, 14],
  ])(
    'of %i positions have %i and %i windows, %i channels, and marks of %i steps',
    (positions, p, q, channels, mark) => {
      const table = buildCode('vernier', positions);
      expect(table.tracks.map((track) => track.startsDeg.length / 2)).toEqual([q, p]); // the coarser inside
      expect(table.channels).toHaveLength(channels);
      expect(factsOf(table.words).shortestRun).toBe(mark);
      expect(codeProperties(table).shortestRunSteps).toBe(mark);
    },
  );

  it('stand their heads apart round the turn', () => {
    const { channels } = buildCode('vernier', 80);
    for (const track of [0, 1]) {
      const angles = channels.filter((channel) => channel.track === track).map(({ angleDeg }) => angleDeg);
      const sorted = [...angles].sort((a, b) => a - b);
      const gaps = sorted.map((angle, i) =>
        i === 0 ? angle + 360 - sorted.at(-1)! : angle - sorted[i - 1]!,
      );
      expect(Math.min(...gaps)).toBeGreaterThan(30);
    }
  });

  it.each([
    [30, '28 or 32'],
    [4, '8'],
    [25, '24 or 28'],
    [268, '264 or 272'], // 67 windows on one comb would need 68 channels
  ])('refuse %i positions and name %s', (positions, nearest) => {
    expect(codeProblems('vernier', positions)).toMatchObject([
      { code: 'codes/no-vernier', fix: `Set need.positions to ${nearest}.` },
    ]);
  });
});
