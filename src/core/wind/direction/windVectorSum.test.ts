import { describe, expect, it } from 'vitest';
import { vectorMean, WindVectorSum } from './windVectorSum.ts';

describe('the mean of winds as vectors', () => {
  it('points with the stronger wind, where the mean heading does not', () => {
    expect(vectorMean([0, 90], [1, 3]).headingDeg).toBeCloseTo(71.565051, 6);
  });

  it('lets a calm weigh on both speeds but not on the direction', () => {
    const mean = vectorMean([270, null], [4, 0]);
    expect(mean.headingDeg).toBeCloseTo(270, 9);
    expect(mean.vectorSpeedMPerS).toBeCloseTo(2, 12);
    expect(mean.scalarSpeedMPerS).toBe(2);
  });

  it('has neither direction nor steadiness in a flat calm', () => {
    expect(vectorMean([null, null], [0, 0])).toEqual({
      eastwardMPerS: 0,
      northwardMPerS: 0,
      vectorSpeedMPerS: 0,
      headingDeg: null,
      scalarSpeedMPerS: 0,
      steadiness: null,
    });
  });

  it('is the same of two sums joined', () => {
    const [a, b] = [new WindVectorSum(), new WindVectorSum()];
    a.add(350, 4);
    b.add(10, 6);
    b.add(355, 5);
    a.merge(b);
    const whole = vectorMean([350, 10, 355], [4, 6, 5]);
    expect(a.mean().vectorSpeedMPerS).toBeCloseTo(whole.vectorSpeedMPerS, 12);
    expect(a.mean().headingDeg).toBeCloseTo(whole.headingDeg!, 9);
  });

  it('needs as many speeds as headings, at least one, and each a number', () => {
    expect(() => vectorMean([1, 2], [3])).toThrow('wind/unequal-lengths');
    expect(() => vectorMean([], [])).toThrow('wind/no-readings');
    expect(() => vectorMean([NaN], [3])).toThrow('wind/bad-reading');
    expect(() => vectorMean([10], [-3])).toThrow('wind/bad-reading');
  });
});
