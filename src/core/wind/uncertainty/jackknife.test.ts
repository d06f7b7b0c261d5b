import { describe, expect, it } from 'vitest';
import { jackknifeError } from './jackknife.ts';

describe('the error from leaving out one group at a time', () => {
  it('of a mean of single readings is their deviation over the root of their number', () => {
    const readings = [3, 5, 8, 4, 10];
    const mean = 6;
    const without = readings.map((reading) => (30 - reading) / 4);
    // (9 + 1 + 4 + 4 + 16) / 4 / 5
    expect(jackknifeError(mean, without, [1, 1, 1, 1, 1])).toBeCloseTo(Math.sqrt(34 / 4 / 5), 12);
  });

  it('of a ratio with groups of unequal size is that of the group means, weighted', () => {
    const [sizes, sums] = [
      [10, 20, 30],
      [4, 10, 9],
    ];
    const whole = 23 / 60;
    const without = sizes.map((size, j) => (23 - sums[j]!) / (60 - size));
    // 1/g Σ (mean_j - whole)² m_j / (n - m_j), derived by hand from the formula
    const variance = sizes.reduce((sum, m, j) => sum + ((sums[j]! / m - whole) ** 2 * m) / (60 - m), 0) / 3;
    expect(jackknifeError(whole, without, sizes)).toBeCloseTo(Math.sqrt(variance), 12);
  });

  it('is nothing where every group agrees, and unknown for a single group', () => {
    expect(jackknifeError(4, [4, 4, 4], [1, 2, 3])).toBeCloseTo(0, 12);
    expect(jackknifeError(4, [4], [1])).toBeNull();
  });

  it('needs a size for each group', () => {
    expect(() => jackknifeError(1, [1, 2], [1])).toThrow('wind/unequal-lengths');
    expect(() => jackknifeError(1, [1, 2], [1, 0])).toThrow('wind/bad-reading');
  });
});
