import { describe, expect, it } from 'vitest';
import { shareInterval } from './interval.ts';

const many = { blocks: 1_000_000, groups: 1_000_000 };

describe('the interval of a share', () => {
  // Newcombe (1998), table I, score method without continuity correction (values from memory).
  it.each([
    [81, 263, 0.2553, 0.3662],
    [15, 148, 0.0624, 0.1605],
    [1, 29, 0.0061, 0.1718],
  ])('for %i of %i independent readings is the published %f to %f', (count, all, low, high) => {
    const share = count / all;
    const interval = shareInterval(share, Math.sqrt((share * (1 - share)) / all), many)!;
    expect(Math.abs(interval.low - low)).toBeLessThanOrEqual(5e-5);
    expect(Math.abs(interval.high - high)).toBeLessThanOrEqual(5e-5);
  });

  it('for none of 20 blocks reaches up to the published 0.1611', () => {
    const interval = shareInterval(0, 0, { blocks: 20, groups: 1_000_000 })!;
    expect(interval.low).toBe(0);
    expect(Math.abs(interval.high - 0.1611)).toBeLessThanOrEqual(5e-5);
  });

  it('widens with few groups, and is unknown for one', () => {
    const width = (groups: number): number => {
      const { low, high } = shareInterval(0.3, 0.05, { blocks: groups, groups })!;
      return high - low;
    };
    expect(width(3)).toBeGreaterThan(width(20));
    expect(shareInterval(0.3, 0.05, { blocks: 1, groups: 1 })).toBeNull();
    expect(shareInterval(0.3, null, many)).toBeNull();
  });

  it('stays within 0 and 1', () => {
    for (const share of [0, 1e-6, 0.5, 1]) {
      const { low, high } = shareInterval(share, 0.4 * share * (1 - share), { blocks: 3, groups: 3 })!;
      expect(low).toBeGreaterThanOrEqual(0);
      expect(high).toBeLessThanOrEqual(1);
      expect(low).toBeLessThanOrEqual(share);
      expect(high).toBeGreaterThanOrEqual(share);
    }
  });

  it('is not made from what is no share', () => {
    expect(() => shareInterval(1.1, 0.1, many)).toThrow('wind/bad-reading');
    expect(() => shareInterval(0.5, -0.1, many)).toThrow('wind/bad-reading');
  });
});
