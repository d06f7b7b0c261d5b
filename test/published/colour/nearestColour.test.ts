import { describe, expect, it } from 'vitest';
import { chromaticityOf, nearestColour } from '../../../src/core/head/index.ts';

const centroids = [
  [0.6, 0.22],
  [0.25, 0.5],
  [0.18, 0.3],
] as const;
const rule = { centroids, rejectRatio: 0.5, leastSumCounts: 60 };
const sample = [120, 60, 55] as const;

describe('the worked example of a reading', () => {
  it('has the shares and distances printed, and is red', () => {
    const [r, g] = chromaticityOf(sample);
    expect(Math.abs(r - 0.5106)).toBeLessThan(5e-5);
    expect(Math.abs(g - 0.2553)).toBeLessThan(5e-5);
    const distances = centroids.map(([cr, cg]) => Math.hypot(r - cr, g - cg));
    for (const [i, printed] of [0.0961, 0.3575, 0.3336].entries()) {
      expect(Math.abs(distances[i]! - printed)).toBeLessThan(5e-5);
    }
    expect(Math.abs(distances[0]! / distances[2]! - 0.288)).toBeLessThan(5e-4);
    expect(nearestColour(sample, rule)).toBe(0);
  });

  it('is rejected where the ratio asked for is below its own, and where there is hardly any light', () => {
    expect(nearestColour(sample, { ...rule, rejectRatio: 0.28 })).toBeNull();
    expect(nearestColour(sample, { ...rule, leastSumCounts: 236 })).toBeNull();
    expect(nearestColour([0, 0, 0], { ...rule, leastSumCounts: 0 })).toBeNull();
  });
});
