import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { HeadingSum } from './headingSum.ts';
import { meanHeading } from './meanHeading.ts';
import { eastParts, northParts, unitVectorSlot } from './unitVector.ts';

const angle = fc.double({ min: -720, max: 720, noNaN: true });

describe('the running sum of headings', () => {
  it('gives what the list gives, also when two sums are joined', () => {
    fc.assert(
      fc.property(fc.array(angle, { minLength: 1 }), fc.array(angle), (first, second) => {
        const [a, b] = [new HeadingSum(), new HeadingSum()];
        first.forEach((heading) => a.add(heading));
        second.forEach((heading) => b.add(heading));
        a.merge(b);
        const whole = meanHeading([...first, ...second]);
        expect(Math.abs(a.mean().agreement - whole.agreement)).toBeLessThan(1e-12);
      }),
      { seed: 20240613 },
    );
  });

  it('counts a weight of 3 as three readings', () => {
    const [weighted, counted] = [new HeadingSum(), new HeadingSum()];
    weighted.add(10, 3);
    weighted.add(100);
    for (const heading of [10, 10, 10, 100]) counted.add(heading);
    expect(weighted.mean().headingDeg).toBeCloseTo(counted.mean().headingDeg!, 12);
    expect(weighted.mean().agreement).toBeCloseTo(counted.mean().agreement, 12);
  });

  it('has no mean of nothing, nor of readings without weight', () => {
    const sum = new HeadingSum();
    expect(() => sum.mean()).toThrow('wind/no-readings');
    sum.add(10, 0);
    expect(() => sum.mean()).toThrow('wind/no-readings');
  });

  it('takes neither NaN nor a weight below nothing', () => {
    const sum = new HeadingSum();
    expect(() => sum.add(NaN)).toThrow('wind/bad-reading');
    expect(() => sum.add(10, -1)).toThrow('wind/bad-reading');
    expect(() => sum.mean()).toThrow('wind/no-readings');
  });
});

describe('the memory of unit vectors', () => {
  it('gives sine and cosine of every heading, whatever was asked before', () => {
    fc.assert(
      fc.property(
        fc.array(fc.double({ min: 0, max: 359.999999, noNaN: true }), { minLength: 1 }),
        (headings) => {
          for (const heading of [...headings, ...headings]) {
            const slot = unitVectorSlot(heading);
            expect(northParts[slot]).toBe(Math.cos((heading * Math.PI) / 180));
            expect(eastParts[slot]).toBe(Math.sin((heading * Math.PI) / 180));
          }
        },
      ),
      { seed: 20240614 },
    );
  });
});
