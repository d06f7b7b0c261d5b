import { describe, expect, it } from 'vitest';
import { turnBetween } from '../../../src/core/units/index.ts';
import { meanHeading, unwrappedMean, vectorMean, yamartinoSpread } from '../../../src/core/wind/index.ts';
import { reports } from './boston.ts';

const apart = (a: number, b: number): number => Math.abs(turnBetween(a, b));
const headings = reports.map(({ headingDeg }) => headingDeg);

describe('a real day of wind across north', () => {
  it('has a unit-vector mean of 358.749120° with an agreement of 0.711705138', () => {
    const { headingDeg, agreement } = meanHeading(headings);
    expect(apart(headingDeg!, 358.74912)).toBeLessThan(1e-6);
    expect(Math.abs(agreement - 0.711705138)).toBeLessThan(1e-9);
    expect(Math.abs(yamartinoSpread(agreement) - 47.019387)).toBeLessThan(1e-6);
  });

  it('has a vector mean of 4.351275 m/s from 357.474441°, and a scalar mean of 5.786250 m/s', () => {
    const mean = vectorMean(
      headings,
      reports.map(({ speedMPerS }) => speedMPerS),
    );
    expect(Math.abs(mean.vectorSpeedMPerS - 4.351275)).toBeLessThan(1e-6);
    expect(apart(mean.headingDeg!, 357.474441)).toBeLessThan(1e-6);
    expect(Math.abs(mean.scalarSpeedMPerS - 5.78625)).toBeLessThan(1e-9);
    expect(Math.abs(mean.eastwardMPerS - 0.191739)).toBeLessThan(1e-6);
    expect(Math.abs(mean.northwardMPerS + 4.347049)).toBeLessThan(1e-6);
  });

  it('misleads the method for readings a second apart, which says so', () => {
    const { headingDeg, caution } = unwrappedMean(headings, 3_600_000);
    expect(apart(headingDeg!, 15)).toBeLessThan(1e-9);
    expect(caution).toBe('slow-sampling');
  });
});
