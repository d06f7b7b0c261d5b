import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { turnBetween } from '../../units/index.ts';
import { smallestArc } from './smallestArc.ts';
import { unwrappedMean, UnwrappedSum } from './unwrappedSum.ts';

const apart = (a: number, b: number): number => Math.abs(turnBetween(a, b));

describe('following the vane round', () => {
  it('finds the same of two sums joined as of one, over whole turns', () => {
    const step = fc.integer({ min: -170, max: 170 });
    fc.assert(
      fc.property(fc.array(step, { minLength: 2, maxLength: 40 }), fc.nat(), (steps, cut) => {
        let heading = 0;
        const headings = steps.map((turn) => (heading = (heading + turn + 720) % 360));
        const at = cut % headings.length;
        const [a, b, whole] = [new UnwrappedSum(), new UnwrappedSum(), new UnwrappedSum()];
        headings.forEach((reading, i) => (i < at ? a : b).add(i * 1000, reading));
        headings.forEach((reading, i) => whole.add(i * 1000, reading));
        a.merge(b);
        const [joined, direct] = [a.result(), whole.result()];
        expect(apart(joined.headingDeg!, direct.headingDeg!)).toBeLessThan(1e-8);
        expect(joined.spreadDeg).toBeCloseTo(direct.spreadDeg!, 7);
        expect(joined.extremes!.rangeDeg).toBeCloseTo(direct.extremes!.rangeDeg, 8);
        expect(joined.caution).toBe(direct.caution);
      }),
      { seed: 20240615 },
    );
  });

  it('has the extremes of the smallest arc while the vane stays on one side', () => {
    const headings = [350, 358, 5, 12, 2, 345, 351];
    const { extremes } = unwrappedMean(headings, 1000);
    expect(extremes).toEqual(smallestArc(headings));
  });

  it('marks a gap, and samples that are too far apart throughout', () => {
    const sum = new UnwrappedSum();
    for (const second of [0, 1, 2, 3, 5, 6]) sum.add(second * 1000, 10 + second);
    expect(sum.result().caution).toBe('gap');
    expect(unwrappedMean([10, 20, 30], 1000).caution).toBeNull();
    expect(unwrappedMean([10, 20, 30], 2000).caution).toBe('slow-sampling');
  });

  it('marks a gap at a join', () => {
    const [a, b] = [new UnwrappedSum(), new UnwrappedSum()];
    for (let i = 0; i < 5; i++) {
      a.add(i * 1000, 10);
      b.add(60_000 + i * 1000, 12);
    }
    a.merge(b);
    expect(a.result().caution).not.toBeNull();
  });

  it('gives the mean of nothing but a refusal, and takes readings in order of time only', () => {
    const sum = new UnwrappedSum();
    expect(() => sum.result()).toThrow('wind/no-readings');
    sum.add(1000, 10);
    expect(() => sum.add(1000, 11)).toThrow('wind/time-not-rising');
    expect(() => sum.add(NaN, 11)).toThrow('wind/bad-reading');
    expect(() => sum.add(2000, NaN)).toThrow('wind/bad-reading');
    const earlier = new UnwrappedSum();
    earlier.add(500, 10);
    expect(() => sum.merge(earlier)).toThrow('wind/time-not-rising');
  });
});
