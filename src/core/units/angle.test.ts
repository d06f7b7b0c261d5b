import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { degToRad, radToDeg, turnBetween, wrapDegrees } from './index.ts';

describe('wrapDegrees', () => {
  it('never gives 360, not even for an angle a hair below 0', () => {
    expect(wrapDegrees(-1e-15)).toBe(0);
    expect(wrapDegrees(360)).toBe(0);
    expect(wrapDegrees(-90)).toBe(270);
  });

  it('stays in [0, 360) and differs from the angle by whole turns', () => {
    fc.assert(
      fc.property(fc.double({ min: -1e6, max: 1e6, noNaN: true }), (angle) => {
        const wrapped = wrapDegrees(angle);
        expect(wrapped).toBeGreaterThanOrEqual(0);
        expect(wrapped).toBeLessThan(360);
        const turns = (angle - wrapped) / 360;
        expect(Math.abs(turns - Math.round(turns))).toBeLessThan(1e-9);
      }),
      { seed: 20261125 },
    );
  });
});

describe('turnBetween', () => {
  it('goes the short way round, clockwise positive', () => {
    expect(turnBetween(350, 10)).toBe(20);
    expect(turnBetween(10, 350)).toBe(-20);
    expect(turnBetween(0, 180)).toBe(180);
    expect(turnBetween(180, 0)).toBe(180);
  });
});

describe('degrees and radians', () => {
  it('agree on half a turn', () => {
    expect(degToRad(180)).toBe(Math.PI);
    expect(radToDeg(Math.PI)).toBe(180);
  });
});
