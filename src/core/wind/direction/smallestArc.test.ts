import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { wrapDegrees } from '../../units/index.ts';
import { smallestArc } from './smallestArc.ts';

describe('the smallest arc that holds every direction', () => {
  it.each([
    [[280, 350, 300], { fromDeg: 280, toDeg: 350, rangeDeg: 70 }],
    [[350, 20, 5], { fromDeg: 350, toDeg: 20, rangeDeg: 30 }],
    [[90], { fromDeg: 90, toDeg: 90, rangeDeg: 0 }],
    [[360, 0, -360], { fromDeg: 0, toDeg: 0, rangeDeg: 0 }],
    [[0, 120, 240], { fromDeg: 0, toDeg: 240, rangeDeg: 240 }],
  ])('of %j', (headings, arc) => {
    expect(smallestArc(headings)).toEqual(arc);
  });

  it('holds them all, and no shorter arc between two of them does', () => {
    const whole = fc.array(fc.integer({ min: 0, max: 359 }), { minLength: 1, maxLength: 12 });
    fc.assert(
      fc.property(whole, (headings) => {
        const holds = (from: number, range: number): boolean =>
          headings.every((heading) => wrapDegrees(heading - from) <= range);
        const { fromDeg, rangeDeg } = smallestArc(headings);
        expect(holds(fromDeg, rangeDeg)).toBe(true);
        // A shortest arc begins at a reading: try each of them, one degree shorter.
        expect(headings.some((from) => holds(from, rangeDeg - 1))).toBe(false);
      }),
      { seed: 20240616 },
    );
  });

  it('needs readings, and numbers', () => {
    expect(() => smallestArc([])).toThrow('wind/no-readings');
    expect(() => smallestArc([10, NaN])).toThrow('wind/bad-reading');
  });
});
