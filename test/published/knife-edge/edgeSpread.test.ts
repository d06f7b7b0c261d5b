import { describe, expect, it } from 'vitest';
import { edgeSpread } from '../../../src/core/head/index.ts';

const beam = edgeSpread({ shape: 'gaussian', radiusMm: 1 });

describe('a knife edge moved through a Gaussian beam of 1 mm radius', () => {
  it.each([
    [0, 0.5],
    [0.25, 0.308538],
    [0.5, 0.158655],
    [1, 0.02275],
    [-0.5, 0.841345],
  ])('at %f mm lets %f of the light pass', (x, passed) => {
    expect(Math.abs(beam.transmitted(x) - passed)).toBeLessThanOrEqual(5e-7);
  });

  it.each([
    [0.1, 1.281552],
    [0.05, 1.644854],
    [0.2, 0.841621],
    [0.01, 2.326348],
  ])('goes from %f of the light to the rest within %f radii', (share, width) => {
    expect(Math.abs(beam.edgeAt(share) - beam.edgeAt(1 - share) - width)).toBeLessThanOrEqual(5e-7);
  });

  it('leaves 0.00135 beyond one and a half radii, which neighbour tracks may see', () => {
    expect(Math.abs(beam.transmitted(1.5) - 0.00135)).toBeLessThanOrEqual(5e-6);
  });
});
