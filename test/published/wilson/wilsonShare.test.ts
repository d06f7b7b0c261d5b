import { describe, expect, it } from 'vitest';
import { wilsonShare } from '../../../src/core/proof/index.ts';

describe('the range of a share in 95 of 100 cases', () => {
  it.each([
    [81, 263, 0.2553, 0.3662],
    [15, 148, 0.0624, 0.1605],
    [0, 20, 0, 0.1611],
    [1, 29, 0.0061, 0.1718],
  ])('for %i of %i is %f to %f', (successes, trials, low, high) => {
    const share = wilsonShare(successes, trials);
    expect(share.value).toBe(successes / trials);
    expect(Math.abs(share.low - low)).toBeLessThanOrEqual(5e-5);
    expect(Math.abs(share.high - high)).toBeLessThanOrEqual(5e-5);
  });

  it('never leaves 0 to 1, and all of a few is no certainty', () => {
    const all = wilsonShare(5, 5);
    expect(all.high).toBe(1);
    expect(all.low).toBeGreaterThan(0.5);
    expect(all.low).toBeLessThan(0.6);
  });
});
