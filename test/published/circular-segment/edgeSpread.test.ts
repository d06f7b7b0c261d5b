import { describe, expect, it } from 'vitest';
import { edgeSpread } from '../../../src/core/head/index.ts';

describe('an edge across a round aperture of 1 mm radius', () => {
  const round = edgeSpread({ shape: 'round', diameterMm: 2 });

  it.each([
    [0, 0.5],
    [0.25, 0.342519],
    [0.5, 0.195501],
    [0.75, 0.072147],
    [-0.5, 0.804499],
    [1, 0],
    [-1, 1],
  ])('at %f mm leaves %f open', (x, open) => {
    expect(Math.abs(round.transmitted(x) - open)).toBeLessThanOrEqual(5e-7);
  });

  it('goes from a tenth to nine tenths within 1.3741 radii', () => {
    expect(Math.abs(round.edgeAt(0.1) - round.edgeAt(0.9) - 1.3741)).toBeLessThanOrEqual(5e-5);
  });
});

describe('an edge across a slit', () => {
  it('goes from a tenth to nine tenths within 0.8 of its width', () => {
    const slit = edgeSpread({ shape: 'slit', widthMm: 1.5, lengthMm: 4 });
    expect(slit.edgeAt(0.1) - slit.edgeAt(0.9)).toBeCloseTo(1.2, 12);
    expect(slit.transmitted(0.75)).toBe(0);
    expect(slit.transmitted(-0.75)).toBe(1);
  });
});
