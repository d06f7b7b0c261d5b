import { describe, expect, it } from 'vitest';
import { isWindow } from '../../../src/core/disc/index.ts';
import { levelAt } from '../../../src/core/codes/index.ts';
import { lightLevel, neighboursOf, seenAsDrawn, type Aperture } from '../../../src/core/head/index.ts';
import { handDisc } from '../../support/handDisc.ts';

/** How bright the spot is at a place along and across the track. [mm] */
function brightness(aperture: Aperture, along: number, across: number): number {
  switch (aperture.shape) {
    case 'slit':
      return Math.abs(along) < aperture.widthMm / 2 && Math.abs(across) < aperture.lengthMm / 2 ? 1 : 0;
    case 'round':
      return Math.hypot(along, across) < aperture.diameterMm / 2 ? 1 : 0;
    case 'gaussian':
      return Math.exp((-2 * (along ** 2 + across ** 2)) / aperture.radiusMm ** 2);
  }
}

const SQUARES = 900;

/** Light through every window under the spot, over the light through an open ring of its own. */
function lightBySquares(disc: ReturnType<typeof handDisc>, track: number, aperture: Aperture, angle: number) {
  const { midRadiusMm } = disc.tracks[track]!;
  const half = aperture.shape === 'gaussian' ? 2.6 * aperture.radiusMm : 2.6;
  let [open, own] = [0, 0];
  for (let i = 0; i < SQUARES; i++) {
    for (let j = 0; j < SQUARES; j++) {
      // Turned by an odd angle, so that no edge lies along a row of squares.
      const x = (((i + 0.5) / SQUARES) * 2 - 1) * half;
      const y = (((j + 0.5) / SQUARES) * 2 - 1) * half;
      const [along, across] = [0.8 * x - 0.6 * y, 0.6 * x + 0.8 * y];
      const light = brightness(aperture, along, across);
      if (light === 0) continue;
      const radius = Math.hypot(along, midRadiusMm + across);
      const ring = disc.tracks.find((t) => radius > t.innerRadiusMm && radius < t.outerRadiusMm);
      if (!ring) continue;
      if (ring.track === track) own += light;
      const at = angle + (Math.atan2(along, midRadiusMm + across) * 180) / Math.PI;
      if (isWindow(levelAt(disc.code.tracks[ring.track]!, at), disc.spec)) open += light;
    }
  }
  return open / own;
}

describe('the light of a spot that reaches into neighbour tracks', () => {
  const disc = handDisc({ positions: 32, firstRadiusMm: 20, pitchMm: 4, webMm: 0.6 });

  it.each<[string, Aperture]>([
    ['a slit within its ring', { shape: 'slit', widthMm: 1.2, lengthMm: 3 }],
    ['a round spot within its ring', { shape: 'round', diameterMm: 2.4 }],
    ['a slit over both webs', { shape: 'slit', widthMm: 1.2, lengthMm: 4.9 }],
    ['a round spot over both webs', { shape: 'round', diameterMm: 4.8 }],
    ['a beam with its tails on the neighbours', { shape: 'gaussian', radiusMm: 1.4 }],
  ])('is, for %s, that of the spot laid over the disc square by square', (_, aperture) => {
    const track = 2;
    const seen = seenAsDrawn(disc, track, { aperture });
    const edge = seen.edgesDeg[1]!;
    for (const move of [-0.55, -0.2, 0, 0.35, 0.6]) {
      const angle = edge + (move / seen.radiusMm) * (180 / Math.PI);
      const apart = Math.abs(lightLevel(seen, angle) - lightBySquares(disc, track, aperture, angle));
      expect(apart, `${move} mm off the edge`).toBeLessThan(1e-4 * allowance(aperture));
    }
  });

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

/** The squares themselves are this good, in units of 1e-4; a sharp rim is met by fewer of them than a beam. */
function allowance(aperture: Aperture): number {
  return aperture.shape === 'gaussian' ? 1 : 3;
}
