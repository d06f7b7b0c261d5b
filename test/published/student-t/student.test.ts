import { describe, expect, it } from 'vitest';
import { studentFactor } from '../../../src/core/wind/index.ts';

describe("Student's factor", () => {
  it.each([
    [1, 12.706],
    [2, 4.303],
    [3, 3.182],
    [4, 2.776],
    [5, 2.571],
    [10, 2.228],
    [20, 2.086],
    [30, 2.042],
    [60, 2.0],
    [120, 1.98],
  ])('for %i degrees of freedom is %f as printed', (freedom, factor) => {
    expect(Math.abs(studentFactor(freedom) - factor)).toBeLessThanOrEqual(5e-4);
  });

  it.each([
    [1, 12.706204736174694],
    [30, 2.0422724563012378],
    [200, 1.9718962236339088],
    [201, 1.971836506779859],
    [1_000_000, 1.959966356814107],
  ])('for %i degrees of freedom agrees with scipy to nine places', (freedom, factor) => {
    expect(Math.abs(studentFactor(freedom) - factor)).toBeLessThan(2e-9);
  });

  it('takes the safe side of a part of a degree', () => {
    expect(studentFactor(3.9)).toBe(studentFactor(3));
  });

  it('needs at least one degree of freedom', () => {
    expect(() => studentFactor(0.5)).toThrow('wind/bad-reading');
  });
});
