import { describe, expect, it } from 'vitest';
import { edgeSpread, penumbraMm, type Aperture } from '../../../src/core/head/index.ts';

const LIGHT = { sourceMm: 3, sourceToDiscMm: 10, discToApertureMm: 2 };

/** The plain edge averaged over the half shadow, in small slices. */
function averaged(aperture: Aperture, x: number, widthMm: number): number {
  const sharp = edgeSpread(aperture);
  const slices = 20_000;
  let sum = 0;
  for (let i = 0; i < slices; i++) sum += sharp.transmitted(x + ((i + 0.5) / slices - 0.5) * widthMm);
  return sum / slices;
}

describe('an edge in the light of a source of some size', () => {
  it('throws a half shadow of 0.6 mm for 3 mm of light, 10 mm before and 2 mm behind', () => {
    expect(penumbraMm(LIGHT)).toBeCloseTo(0.6, 12);
    expect(penumbraMm(null)).toBe(0);
  });

  it.each<[string, Aperture]>([
    ['slit', { shape: 'slit', widthMm: 1.2, lengthMm: 2 }],
    ['round spot', { shape: 'round', diameterMm: 1.4 }],
    ['beam', { shape: 'gaussian', radiusMm: 0.6 }],
  ])('passes a %s as the plain edge averaged over it', (_, aperture) => {
    const soft = edgeSpread(aperture, { penumbra: LIGHT });
    for (let x = -1.2; x <= 1.2; x += 0.15) {
      expect(Math.abs(soft.transmitted(x) - averaged(aperture, x, 0.6))).toBeLessThan(1e-7);
    }
    for (const light of [0.02, 0.3, 0.5, 0.9]) {
      expect(soft.transmitted(soft.edgeAt(light))).toBeCloseTo(light, 9);
    }
  });

  it('meets a long slit askew as the plain askew edge averaged over it', () => {
    const aperture = { shape: 'slit', widthMm: 1.2, lengthMm: 4 } as const;
    const soft = edgeSpread(aperture, { penumbra: LIGHT, radiusMm: 15 });
    for (let x = -0.8; x <= 0.8; x += 0.1) {
      let sum = 0;
      for (let i = 0; i < 2_000; i++) {
        const slope = x / Math.sqrt(225 - x * x);
        const at = 15 + ((i + 0.5) / 2_000 - 0.5) * 4;
        sum += averagedRamp(at * slope, 1.2, 0.6);
      }
      expect(Math.abs(soft.transmitted(x) - sum / 2_000)).toBeLessThan(1e-6);
    }
  });
});

/** A ramp of one width averaged over another, in small slices. */
function averagedRamp(x: number, widthMm: number, softMm: number): number {
  let sum = 0;
  for (let i = 0; i < 400; i++) {
    sum += Math.min(1, Math.max(0, 0.5 - (x + ((i + 0.5) / 400 - 0.5) * softMm) / widthMm));
  }
  return sum / 400;
}
