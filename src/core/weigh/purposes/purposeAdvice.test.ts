import { describe, expect, it } from 'vitest';
import { purposeAdvice, purposeNames } from '../index.ts';

describe('from a purpose to a need', () => {
  it.each(purposeNames)('for %s says positions, what a reading tells, and the roses', (name) => {
    const { need, says, stepDeg, roses } = purposeAdvice(name, 15);
    expect(stepDeg).toBeCloseTo(360 / need.positions, 12);
    // Half a step must leave something for making it.
    expect(need.accuracyDeg).toBeGreaterThan(stepDeg / 2);
    expect(says).toHaveLength(4);
    expect(roses.length).toBeGreaterThan(3);
  });

  it('gives a garden vane of 32 positions the figures of the quantisation table', () => {
    const { oneReading, mean, roses } = purposeAdvice('garden', 15);
    expect(oneReading.largestDeg).toBe(5.625);
    expect(oneReading.rmsDeg).toBeCloseTo(3.2476, 4);
    // Sixty swings of ten seconds: 15 over the root of 60.
    expect(mean!.standardErrorDeg).toBeCloseTo(15 / Math.sqrt(60), 12);
    expect(mean!.stepBiasDeg).toBeLessThan(1e-9);
    expect(roses.find(({ sectors }) => sectors === 16)!.isFair).toBe(true);
  });

  it('takes no mean of a shaft that stands still', () => {
    expect(purposeAdvice('dome', 15).mean).toBeNull();
    expect(purposeAdvice('gate', 15).says[2]).toContain('no more than one reading');
  });

  it('refuses a purpose it does not know, and names those it does', () => {
    expect(() => purposeAdvice('kitchen', 15)).toThrow('weigh/unknown-purpose');
  });
});
