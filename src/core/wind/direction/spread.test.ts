import { describe, expect, it } from 'vitest';
import { circularSpread, exactSpread, yamartinoSpread } from './spread.ts';

describe('the spread of direction', () => {
  it('has no exact value where there is no mean', () => {
    expect(exactSpread([0, 180])).toBeNull();
    expect(circularSpread(0)).toBeNull();
  });

  it('is exact across north', () => {
    expect(exactSpread([350, 10])).toBeCloseTo(10, 12);
    expect(exactSpread([5, 5, 5])).toBe(0);
  });

  it('is not worked out from an agreement that cannot be', () => {
    for (const agreement of [-0.1, 1.1, NaN]) {
      expect(() => yamartinoSpread(agreement)).toThrow('wind/bad-reading');
      expect(() => circularSpread(agreement)).toThrow('wind/bad-reading');
    }
  });
});
