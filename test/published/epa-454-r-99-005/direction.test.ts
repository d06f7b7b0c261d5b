import { describe, expect, it } from 'vitest';
import { turnBetween } from '../../../src/core/units/index.ts';
import { hourSpread, meanHeading, unwrappedMean, vectorMean } from '../../../src/core/wind/index.ts';

const apart = (a: number, b: number): number => Math.abs(turnBetween(a, b));

describe('the unit-vector mean (6.2.2)', () => {
  it('of 1, 0 and 359 is 0, not 120', () => {
    expect(apart(meanHeading([1, 0, 359]).headingDeg!, 0)).toBeLessThan(1e-9);
  });

  it('of 0, 0 and 90 is atan(1/2), where following the vane gives 30', () => {
    expect(apart(meanHeading([0, 0, 90]).headingDeg!, 26.565051)).toBeLessThan(1e-6);
    expect(apart(unwrappedMean([0, 0, 90], 1000).headingDeg!, 30)).toBeLessThan(1e-9);
  });
});

describe('the vector mean (6.2.2)', () => {
  it.each([
    [[0, 90], [10, 10], -5, -5, 7.071068, 45, 10, 0.707107],
    [[90, 180], [1, 10], -0.5, 5, 5.024938, 174.289407, 5.5, 0.913625],
    [[360, 270], [3, 4], 2, -1.5, 2.5, 306.869898, 3.5, 0.714286],
    [[350, 10, 355, 20, 340], [4, 6, 5, 7, 3], -0.25592, -4.845195, 4.851949, 3.023511, 5, 0.97039],
  ])('of %j at %j m/s', (headings, speeds, east, north, vector, heading, scalar, steadiness) => {
    const mean = vectorMean(headings, speeds);
    expect(Math.abs(mean.eastwardMPerS - east)).toBeLessThan(1e-6);
    expect(Math.abs(mean.northwardMPerS - north)).toBeLessThan(1e-6);
    expect(Math.abs(mean.vectorSpeedMPerS - vector)).toBeLessThan(1e-6);
    expect(apart(mean.headingDeg!, heading)).toBeLessThan(1e-6);
    expect(mean.scalarSpeedMPerS).toBe(scalar);
    expect(Math.abs(mean.steadiness! - steadiness)).toBeLessThan(1e-6);
  });

  it('of two opposite winds has no direction and no steadiness left', () => {
    const mean = vectorMean([90, 270], [5, 5]);
    expect(mean.headingDeg).toBeNull();
    expect(mean.scalarSpeedMPerS).toBe(5);
    expect(mean.steadiness).toBeLessThan(1e-12);
  });
});

describe('following the vane round (6.2.1)', () => {
  it('cannot say which way a step of half a turn went', () => {
    const result = unwrappedMean([0, 180], 1000);
    expect(result).toEqual({ headingDeg: null, spreadDeg: null, extremes: null, caution: 'half-turn' });
  });

  it('goes once round the circle to a mean of 179.5', () => {
    const circle = Array.from({ length: 360 }, (_, i) => i);
    const { headingDeg, spreadDeg, caution } = unwrappedMean(circle, 1000);
    expect(apart(headingDeg!, 179.5)).toBeLessThan(1e-9);
    expect(Math.abs(spreadDeg! - 103.922648)).toBeLessThan(1e-6);
    expect(caution).toBeNull();
  });

  it('says that hourly values are too far apart for it', () => {
    expect(unwrappedMean([350, 10, 20], 3_600_000).caution).toBe('slow-sampling');
  });
});

describe("the hour's spread from its quarters (6.2.1)", () => {
  it.each([
    [[10, 12, 8, 14], 11.224972],
    [[5, 5, 20, 30], 18.371173],
  ])('%j give %f', (quarters, hour) => {
    expect(Math.abs(hourSpread(quarters)! - hour)).toBeLessThan(1e-6);
  });

  it('needs two valid quarters of four (6.1)', () => {
    expect(hourSpread([10, null, null, null])).toBeNull();
    expect(hourSpread([10, null, 10, null])).toBe(10);
  });
});
