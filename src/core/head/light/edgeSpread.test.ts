import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { edgeSpread, spreadAcross } from './edgeSpread.ts';
import type { Aperture } from '../headSpec.ts';

const size = fc.double({ min: 0.05, max: 10, noNaN: true });
const apertures: fc.Arbitrary<Aperture> = fc.oneof(
  size.map((widthMm) => ({ shape: 'slit' as const, widthMm, lengthMm: 3 })),
  size.map((diameterMm) => ({ shape: 'round' as const, diameterMm })),
  size.map((radiusMm) => ({ shape: 'gaussian' as const, radiusMm })),
);

describe('an edge passing a spot', () => {
  it('is found again from the light it lets through', () => {
    fc.assert(
      fc.property(apertures, fc.double({ min: 1e-6, max: 1 - 1e-6, noNaN: true }), (aperture, light) => {
        const spread = edgeSpread(aperture);
        expect(spread.transmitted(spread.edgeAt(light))).toBeCloseTo(light, 9);
      }),
      { seed: 11 },
    );
  });

  it('lets through as much from one side as it stops from the other, and less the farther it is ahead', () => {
    fc.assert(
      fc.property(apertures, size, size, (aperture, a, b) => {
        const { transmitted } = edgeSpread(aperture);
        expect(transmitted(a) + transmitted(-a)).toBeCloseTo(1, 12);
        expect(transmitted(Math.max(a, b))).toBeLessThanOrEqual(transmitted(Math.min(a, b)));
      }),
      { seed: 12 },
    );
  });

  it('changes nothing beyond its reach', () => {
    fc.assert(
      fc.property(apertures, (aperture) => {
        const { transmitted, reachMm } = edgeSpread(aperture);
        expect(transmitted(reachMm)).toBeLessThan(1.001e-6);
        expect(transmitted(-reachMm)).toBeGreaterThan(1 - 1.001e-6);
      }),
      { seed: 13 },
    );
  });

  it('is never far enough for more light than there is, or less than none', () => {
    for (const aperture of [
      { shape: 'slit', widthMm: 1, lengthMm: 3 },
      { shape: 'round', diameterMm: 1 },
      { shape: 'gaussian', radiusMm: 1 },
    ] as const) {
      const { edgeAt } = edgeSpread(aperture);
      expect(edgeAt(1.01)).toBe(-Infinity);
      expect(edgeAt(-0.01)).toBe(Infinity);
    }
  });

  it('is softened across the track by the length of a slit, not by its width', () => {
    const slit = { shape: 'slit', widthMm: 1, lengthMm: 4 } as const;
    expect(spreadAcross(slit).transmitted(1)).toBeCloseTo(0.25, 12);
    expect(edgeSpread(slit).transmitted(1)).toBe(0);
  });
});
