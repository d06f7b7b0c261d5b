import { describe, expect, it } from 'vitest';
import { offCentreErrorDeg, strayErrorDeg } from '../../../src/core/weigh/index.ts';

const DEG = 180 / Math.PI;

/** Largest error over a turn of the dipole's field in the chip's plane, by the textbook formula. [deg] */
function largestDipoleError(offMm: number, gapMm: number): number {
  let worst = 0;
  for (let turn = 0; turn < 360; turn += 0.05) {
    const [mx, my] = [Math.cos(turn / DEG), Math.sin(turn / DEG)];
    // From the magnet to the chip: beside the axis along x, below along z.
    const dot = mx * offMm;
    const square = offMm ** 2 + gapMm ** 2;
    const [bx, by] = [3 * dot * offMm - mx * square, -my * square];
    const seen = Math.atan2(-by, -bx) * DEG;
    const error = ((seen - turn + 540) % 360) - 180;
    worst = Math.max(worst, Math.abs(error));
  }
  return worst;
}

describe('a magnet beside the axis', () => {
  it.each([
    [0.25, 2, 1.354],
    [0.5, 2, 5.553],
    [0.25, 3, 0.599],
    [0.5, 3, 2.422],
  ])('by %s mm at a gap of %s mm turns the chip by %s degrees', (off, gap, deg) => {
    expect(Math.abs(offCentreErrorDeg(off, gap) - deg)).toBeLessThanOrEqual(0.0005);
    expect(Math.abs(largestDipoleError(off, gap) - deg)).toBeLessThanOrEqual(0.0015);
  });

  it('does nothing on the axis, and leaves the chip without bearing too far from it', () => {
    expect(offCentreErrorDeg(0, 2)).toBe(0);
    // q = 0 where 3e² = e² + z²: at e = z / √2.
    expect(offCentreErrorDeg(2 / Math.SQRT2 + 1e-9, 2)).toBe(180);
  });
});

it.each([
  [1, 40, 1.43, 0.005],
  [0.05, 40, 0.072, 0.0005],
])('a foreign field of %s mT on %s mT turns the chip by %s degrees', (stray, magnet, deg, half) => {
  expect(Math.abs(strayErrorDeg(stray, magnet) - deg)).toBeLessThanOrEqual(half);
});

it('a foreign field as strong as the magnet leaves no bearing', () => {
  expect(strayErrorDeg(40, 40)).toBe(180);
});
