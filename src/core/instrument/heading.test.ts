import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { degToRad, turnBetween, wrapDegrees } from '../units/index.ts';
import { headingOfDiscAngle, headingOfPosition, type HeadingFrame } from './heading.ts';

const frame = (patternedFace: 'up' | 'down', northOffsetDeg: number): HeadingFrame => ({
  site: { northOffsetDeg },
  head: { patternedFace },
});

/** Disc angle under the head, worked out in space: east x, north y, seen from above; the head stands east. */
function discAngleUnderHead(patternedFace: 'up' | 'down', turnedClockwise: number): number {
  // The index mark has been carried clockwise from the head by the turn of the vane.
  const mark = degToRad(-turnedClockwise);
  const head = { x: 1, y: 0 };
  const along = head.x * Math.cos(mark) + head.y * Math.sin(mark);
  const left = -head.x * Math.sin(mark) + head.y * Math.cos(mark);
  // From the mark to the head, counter-clockwise from above; clockwise on a face that looks down.
  const fromAbove = (Math.atan2(left, along) * 180) / Math.PI;
  return patternedFace === 'up' ? -fromAbove : fromAbove;
}

describe('headingOfDiscAngle', () => {
  it('grows by as much as the vane turns clockwise, whichever way the patterned face looks', () => {
    fc.assert(
      fc.property(
        fc.constantFrom('up' as const, 'down' as const),
        fc.double({ min: -360, max: 720, noNaN: true }),
        fc.double({ min: 0, max: 360, noNaN: true }),
        (face, turn, north) => {
          const heading = headingOfDiscAngle(frame(face, north), discAngleUnderHead(face, turn));
          expect(Math.abs(turnBetween(heading, wrapDegrees(north + turn)))).toBeLessThan(1e-9);
        },
      ),
      { seed: 20240611 },
    );
  });

  it('is the north offset when the index mark stands under the head', () => {
    expect(headingOfDiscAngle(frame('up', 37.5), 0)).toBe(37.5);
    expect(headingOfDiscAngle(frame('down', 37.5), 0)).toBe(37.5);
  });
});

describe('headingOfPosition', () => {
  it('names the middle of the step, not its edge', () => {
    const need = { positions: 8 };
    expect(headingOfPosition({ ...frame('down', 0), need }, 0)).toBe(22.5);
    expect(headingOfPosition({ ...frame('up', 0), need }, 0)).toBe(337.5);
    expect(headingOfPosition({ ...frame('up', 350), need }, 7)).toBe(12.5);
  });
});
