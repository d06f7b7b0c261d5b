import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { speedMoments, SpeedSum } from './speedSum.ts';

describe('moments of speed', () => {
  it('of 1, 2, 3 and 6 m/s by hand', () => {
    expect(speedMoments([1, 2, 3, 6])).toEqual({
      readings: 4,
      meanMPerS: 3,
      deviationMPerS: Math.sqrt(3.5), // (4 + 1 + 0 + 9) / 4
      meanCube: 63, // (1 + 8 + 27 + 216) / 4
      leastMPerS: 1,
      mostMPerS: 6,
    });
  });

  it('keep a small deviation of a strong wind', () => {
    const { deviationMPerS } = speedMoments(Array.from({ length: 1000 }, (_, i) => 60 + (i % 2) * 1e-6));
    expect(deviationMPerS).toBeCloseTo(5e-7, 12);
  });

  it('are the same of two sums joined', () => {
    const speeds = fc.array(fc.double({ min: 0, max: 60, noNaN: true }), { maxLength: 30 });
    fc.assert(
      fc.property(speeds, speeds, (first, second) => {
        fc.pre(first.length + second.length > 0);
        const [a, b] = [new SpeedSum(), new SpeedSum()];
        first.forEach((speed) => a.add(speed));
        second.forEach((speed) => b.add(speed));
        a.merge(b);
        const [joined, whole] = [a.moments(), speedMoments([...first, ...second])];
        expect(joined.meanMPerS).toBeCloseTo(whole.meanMPerS, 9);
        expect(joined.deviationMPerS).toBeCloseTo(whole.deviationMPerS, 6);
        expect(joined.meanCube).toBeCloseTo(whole.meanCube, 6);
        expect([joined.leastMPerS, joined.mostMPerS]).toEqual([whole.leastMPerS, whole.mostMPerS]);
      }),
      { seed: 20240617 },
    );
  });

  it('need a speed, and none below nothing', () => {
    expect(() => speedMoments([])).toThrow('wind/no-readings');
    for (const speed of [NaN, -0.1, Infinity]) {
      expect(() => speedMoments([1, speed])).toThrow('wind/bad-reading');
    }
  });
});
