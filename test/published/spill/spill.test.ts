import { describe, expect, it } from 'vitest';
import {
  lightLevel,
  neighboursOf,
  penumbraMm,
  seenAsDrawn,
  type Aperture,
} from '../../../src/core/head/index.ts';
import { handDisc } from '../../support/handDisc.ts';
import { lightIntegral } from '../../support/lightIntegral.ts';

const LIGHT = { sourceMm: 3, sourceToDiscMm: 10, discToApertureMm: 2 };

describe('the light of a spot that reaches into neighbour tracks', () => {
  const disc = handDisc({ positions: 32, firstRadiusMm: 20, pitchMm: 4, webMm: 0.6 });

  it.each<[string, Aperture]>([
    ['a slit within its ring', { shape: 'slit', widthMm: 1.2, lengthMm: 3 }],
    ['a round spot within its ring', { shape: 'round', diameterMm: 2.4 }],
    ['a beam within its ring', { shape: 'gaussian', radiusMm: 0.8 }],
    ['a slit over both webs', { shape: 'slit', widthMm: 1.2, lengthMm: 4.9 }],
    ['a round spot over both webs', { shape: 'round', diameterMm: 4.8 }],
    ['a beam with its tails on the neighbours', { shape: 'gaussian', radiusMm: 1.4 }],
  ])(
    'is, for %s, that of the spot added up over the disc, with a small light and a large one',
    (_, aperture) => {
      for (const penumbra of [null, LIGHT]) {
        for (const track of penumbra ? [2] : [0, 2, 4]) {
          const seen = seenAsDrawn(disc, track, { aperture, penumbra });
          for (const move of [-0.55, -0.2, 0, 0.35, 0.6]) {
            const angle = seen.edgesDeg[1]! + (move / seen.radiusMm) * (180 / Math.PI);
            const added = lightIntegral({ disc, track, aperture, angle, softMm: penumbraMm(penumbra) });
            const apart = Math.abs(lightLevel(seen, angle) - added);
            expect(apart, `track ${track}, ${move} mm off the edge`).toBeLessThan(1e-4);
          }
        }
      }
    },
  );

  it('is the share past half the pitch of a beam of two and four radii', () => {
    for (const [pitchMm, radiusMm, share] of [
      [4, 2, 0.02275],
      [8, 2, 3.17e-5],
    ] as const) {
      const plain = handDisc({ positions: 4, firstRadiusMm: 1e5, pitchMm, webMm: 0 });
      const spot = { aperture: { shape: 'gaussian', radiusMm } as const, penumbra: null, radialSdMm: 0 };
      const spilled = neighboursOf(plain, 0, spot).reduce((sum, neighbour) => sum + neighbour.share(0), 0);
      const own = 1 - 2 * share;
      // A beam is taken to end where 1e-6 of its light is left; the share is printed to three or four figures.
      expect(Math.abs(spilled * own - share)).toBeLessThan(2e-6 + share * 1e-3);
    }
  });
});
