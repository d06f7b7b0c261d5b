import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { turnBetween } from '../../units/index.ts';
import { meanHeading } from './meanHeading.ts';

const apart = (a: number, b: number): number => Math.abs(turnBetween(a, b));

describe('the mean of headings', () => {
  it('lies across north where the readings do', () => {
    expect(apart(meanHeading([350, 10]).headingDeg!, 0)).toBeLessThan(1e-9);
  });

  it('is null, not 0, when readings cancel out', () => {
    for (const readings of [[0, 180], [0, 90, 180, 270], Array.from({ length: 360 }, (_, i) => i)]) {
      const { headingDeg, agreement } = meanHeading(readings);
      expect(headingDeg).toBeNull();
      expect(agreement).toBeLessThan(1e-12);
    }
  });

  it('is below 360 and never below 0, also a hair west of north', () => {
    for (const reading of [0, 360, -1e-15, 359.9999999999999999, 720]) {
      const { headingDeg } = meanHeading([reading]);
      expect(headingDeg).toBeGreaterThanOrEqual(0);
      expect(headingDeg).toBeLessThan(360);
    }
  });

  it('turns with the readings, and does not care about their order', () => {
    fc.assert(
      fc.property(
        fc.array(fc.integer({ min: 0, max: 80 }), { minLength: 1 }),
        fc.integer({ min: -720, max: 720 }),
        (readings, turn) => {
          const still = meanHeading(readings);
          const turned = meanHeading([...readings].reverse().map((reading) => reading + turn));
          expect(apart(turned.headingDeg!, still.headingDeg! + turn)).toBeLessThan(1e-9);
          expect(turned.agreement).toBeCloseTo(still.agreement, 12);
        },
      ),
      { seed: 20240611 },
    );
  });

  it('mirrors with the readings', () => {
    fc.assert(
      fc.property(fc.array(fc.integer({ min: 0, max: 80 }), { minLength: 1 }), (readings) => {
        const mirrored = meanHeading(readings.map((reading) => -reading)).headingDeg!;
        expect(apart(mirrored, -meanHeading(readings).headingDeg!)).toBeLessThan(1e-9);
      }),
      { seed: 20240612 },
    );
  });

  it('names the reading that is not a number', () => {
    expect(() => meanHeading([10, NaN])).toThrowErrorMatchingInlineSnapshot(`
      [VanewrightError: wind/bad-reading: A reading is not a usable number.
        where:   meanHeading(headings[1])
        got:     NaN
        allowed: a finite angle in degrees
        fix:     Pass null for what could not be read, and leave fillers such as -99.99 or 999 out of the sums.]
    `);
  });

  it('says that there is nothing to average', () => {
    expect(() => meanHeading([])).toThrow('wind/no-readings');
  });
});
