import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { turnBetween } from '../../../src/core/units/index.ts';
import {
  circularSpread,
  exactSpread,
  HeadingSum,
  meanHeading,
  unwrappedMean,
  yamartinoSpread,
} from '../../../src/core/wind/index.ts';

const rows = readFileSync(new URL('./circular.csv', import.meta.url), 'utf8')
  .trim()
  .split('\n')
  .slice(1)
  .map((line) => {
    const [headings, ...values] = line.split(',');
    return { headings: headings!.split(' ').map(Number), values: values.map(Number) };
  });

const apart = (a: number, b: number): number => Math.abs(turnBetween(a, b));

describe('directions, by numpy and scipy', () => {
  it('are all there', () => {
    expect(rows.length).toBe(12);
  });

  it.each(rows)('mean and spreads of $headings agree', ({ headings, values }) => {
    const [mean, agreement, yamartino, circstd, mitsutaMean, mitsutaSpread, exact] = values;
    const unit = meanHeading(headings);
    expect(apart(unit.headingDeg!, mean!)).toBeLessThan(1e-8);
    expect(Math.abs(unit.agreement - agreement!)).toBeLessThan(1e-9);
    // Near full agreement the spread magnifies rounding of 1e-16 to its root: equal readings give up to 1e-6.
    expect(Math.abs(yamartinoSpread(unit.agreement) - yamartino!)).toBeLessThan(2e-6);
    expect(Math.abs(circularSpread(unit.agreement)! - circstd!)).toBeLessThan(2e-6);
    const unwrapped = unwrappedMean(headings, 1000);
    expect(apart(unwrapped.headingDeg!, mitsutaMean!)).toBeLessThan(1e-8);
    expect(Math.abs(unwrapped.spreadDeg! - mitsutaSpread!)).toBeLessThan(1e-8);
    expect(Math.abs(exactSpread(headings)! - exact!)).toBeLessThan(1e-8);
  });

  it.each(rows)('the running sum of $headings agrees with the list', ({ headings }) => {
    const sum = new HeadingSum();
    for (const heading of headings) sum.add(heading);
    expect(sum.mean()).toEqual(meanHeading(headings));
  });
});

describe('the examples of the scipy reference guide', () => {
  const degrees = (radians: number): number => (radians * 180) / Math.PI;

  it('mean of 0.1, 2π + 0.2 and 6π + 0.3 is 0.2', () => {
    const readings = [0.1, 2 * Math.PI + 0.2, 6 * Math.PI + 0.3].map(degrees);
    expect(apart(meanHeading(readings).headingDeg!, degrees(0.2))).toBeLessThan(1e-9);
  });

  it('mean of 0.2, 1.4 and 2.6 with period 1 is 0.4', () => {
    expect(meanHeading([0.2, 1.4, 2.6].map((x) => x * 360)).headingDeg! / 360).toBeCloseTo(0.4, 12);
  });

  it('deviation of 0, 0.1π/2, 0.001π and 0.03π/2 is 0.063564063306', () => {
    const readings = [0, (0.1 * Math.PI) / 2, 0.001 * Math.PI, (0.03 * Math.PI) / 2].map(degrees);
    const spread = circularSpread(meanHeading(readings).agreement)!;
    expect(Math.abs((spread * Math.PI) / 180 - 0.063564063306)).toBeLessThan(5e-13);
  });
});
