import { describe, expect, it } from 'vitest';
import { seededRandom } from './index.ts';

const draws = <T>(count: number, draw: () => T): T[] => Array.from({ length: count }, draw);

describe('seededRandom', () => {
  it('repeats itself for the same seed and differs for another', () => {
    const [a, b, c] = [seededRandom(7), seededRandom(7), seededRandom(8)].map((r) =>
      draws(5, () => r.uniform()),
    );
    expect(a).toEqual(b);
    expect(a).not.toEqual(c);
  });

  it('keeps uniform draws inside the open interval, evenly spread', () => {
    const random = seededRandom(1);
    const values = draws(40_000, () => random.uniform());
    expect(Math.min(...values)).toBeGreaterThan(0);
    expect(Math.max(...values)).toBeLessThan(1);
    // mean 1/2 and variance 1/12, each within 5 standard errors
    const mean = values.reduce((sum, v) => sum + v, 0) / values.length;
    expect(Math.abs(mean - 0.5)).toBeLessThan((5 * Math.sqrt(1 / 12)) / 200);
  });

  it('draws a normal distribution: mean 0, variance 1, 5 % beyond 1.96', () => {
    const random = seededRandom(2);
    const values = draws(40_000, () => random.normal());
    const mean = values.reduce((sum, v) => sum + v, 0) / values.length;
    const variance = values.reduce((sum, v) => sum + v * v, 0) / values.length;
    const beyond = values.filter((v) => Math.abs(v) > 1.959964).length / values.length;
    expect(Math.abs(mean)).toBeLessThan(5 / 200);
    expect(Math.abs(variance - 1)).toBeLessThan((5 * Math.SQRT2) / 200);
    expect(Math.abs(beyond - 0.05)).toBeLessThan((5 * Math.sqrt(0.05 * 0.95)) / 200);
  });
});
