import { describe, expect, it } from 'vitest';
import normalQuantile from '@stdlib/stats-base-dists-normal-quantile';
import { exactSpread, meanHeading, yamartinoSpread } from '../../../src/core/wind/index.ts';

const estimate = (headings: readonly number[]): number => yamartinoSpread(meanHeading(headings).agreement);
const error = (headings: readonly number[]): number => estimate(headings) / exactSpread(headings)! - 1;

/** Evenly spread quantiles of a normal distribution of headings about `centre`. */
const normal = (centre: number, deviation: number): number[] =>
  Array.from({ length: 2000 }, (_, i) => centre + deviation * normalQuantile((i + 0.5) / 2000, 0, 1));

/** Headings evenly spread over an arc. */
const even = (centre: number, arc: number): number[] =>
  Array.from({ length: 1000 }, (_, i) => centre + arc * ((i + 0.5) / 1000 - 0.5));

describe('the single-pass spread of direction', () => {
  it('is within 2 % of the exact one for winds that occur', () => {
    for (const deviation of [1, 2, 5, 10, 20, 30, 40, 50, 60]) {
      expect(Math.abs(error(normal(350, deviation)))).toBeLessThan(0.02);
    }
  });

  it('stays within the worst 15 % for headings spread evenly over an arc', () => {
    for (const arc of [1, 10, 45, 90, 180, 270, 359]) {
      expect(Math.abs(error(even(10, arc)))).toBeLessThan(0.15);
    }
  });

  it('is about 15 % off for two opposite directions, and no more', () => {
    // A hair more of one than of the other, so that there is a mean at all.
    const opposite = [...Array<number>(1001).fill(0), ...Array<number>(1000).fill(180)];
    expect(error(opposite)).toBeGreaterThan(0.145);
    expect(error(opposite)).toBeLessThan(0.155); // printed as 15 %
  });

  it('is 103.923048° at most, for an even circle', () => {
    const circle = Array.from({ length: 360 }, (_, i) => i);
    expect(Math.abs(estimate(circle) - 103.923048)).toBeLessThan(5e-7);
    expect(Math.abs(yamartinoSpread(0) - (90 * 2) / Math.sqrt(3))).toBeLessThan(1e-12);
  });

  it('is 0 for one direction, however the sum rounds', () => {
    expect(yamartinoSpread(1 + 1e-12)).toBe(0);
    expect(estimate(Array<number>(7).fill(33.3))).toBeLessThan(1e-5);
  });
});
