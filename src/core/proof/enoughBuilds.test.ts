import { describe, expect, it } from 'vitest';
import { buildsToSettle, isSettled, wilsonShare } from './index.ts';

describe('whether there are builds enough', () => {
  it('is no for one good build, though all builds are good', () => {
    expect(isSettled(wilsonShare(1, 1), 0.95)).toBe(false);
    expect(isSettled(wilsonShare(0, 1), 0.95)).toBe(true);
    expect(isSettled(wilsonShare(1000, 1000), 0.95)).toBe(true);
  });

  // With all of n good the lower end is n/(n + z²), which reaches 0.95 at n = 19 z² = 72.99.
  it('is yes from 73 builds on where all of them are good and 95 in 100 are wanted', () => {
    expect(buildsToSettle(1, 0.95)).toBe(73);
    expect(wilsonShare(73, 73).low).toBeGreaterThanOrEqual(0.95);
    expect(wilsonShare(72, 72).low).toBeLessThan(0.95);
  });

  it.each([
    [0.97, 0.95],
    [0.9, 0.95],
    [0.5, 0.45],
    [0.011, 0.01],
  ])('changes at the number named, with %f found and %f wanted', (value, wanted) => {
    const enough = buildsToSettle(value, wanted);
    expect(isSettled(wilsonShare(value * enough, enough), wanted)).toBe(true);
    expect(isSettled(wilsonShare(value * (enough - 1), enough - 1), wanted)).toBe(false);
  });

  it('never comes where found and wanted are equal', () => {
    expect(buildsToSettle(0.95, 0.95)).toBe(Infinity);
  });
});
