import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { handDisc } from '../../../../test/support/handDisc.ts';
import { lightIntegral } from '../../../../test/support/lightIntegral.ts';
import { levelAt } from '../../codes/index.ts';
import { degToRad, radToDeg } from '../../units/index.ts';
import type { Aperture } from '../headSpec.ts';
import { lightLevel } from './lightLevel.ts';
import { seenTrack } from './seenTrack.ts';

describe('the light of a channel', () => {
  const disc = handDisc({ positions: 32, firstRadiusMm: 20, pitchMm: 6, webMm: 0 });

  it.each<[string, Aperture]>([
    ['round', { shape: 'round', diameterMm: 2.4 }],
    ['gaussian', { shape: 'gaussian', radiusMm: 0.8 }],
    ['slit', { shape: 'slit', widthMm: 1.5, lengthMm: 3 }],
  ])('is that of its %s spot added up over the code', (_, aperture) => {
    for (const track of [0, 2, 4]) {
      const seen = seenTrack(disc, track, aperture);
      for (let place = 0; place < 8; place++) {
        const edge = seen.edgesDeg[place % seen.edgesDeg.length]!;
        const angle = edge + radToDeg((place - 3.5) / 4 / seen.radiusMm);
        const added = lightIntegral({ disc, track, aperture, angle });
        expect(Math.abs(lightLevel(seen, angle) - added)).toBeLessThan(1e-4);
      }
    }
  });

  it('is 1 in the middle of every window and 0 in the middle of every land', () => {
    for (const track of disc.code.tracks.keys()) {
      const seen = seenTrack(disc, track, { shape: 'slit', widthMm: 1, lengthMm: 3 });
      for (let k = 0; k < 32; k++) {
        const angle = (k + 0.5) * 11.25;
        expect(lightLevel(seen, angle)).toBe(levelAt(disc.code.tracks[track]!, angle) === 1 ? 1 : 0);
      }
    }
  });

  it('goes round with the disc and never leaves 0 to 1', () => {
    const seen = seenTrack(disc, 4, { shape: 'gaussian', radiusMm: 3 });
    fc.assert(
      fc.property(fc.double({ min: -720, max: 720, noNaN: true }), (angle) => {
        const light = lightLevel(seen, angle);
        expect(light).toBeGreaterThanOrEqual(-1e-12);
        expect(light).toBeLessThanOrEqual(1 + 1e-12);
        expect(lightLevel(seen, angle + 360)).toBeCloseTo(light, 9);
      }),
      { seed: 14 },
    );
  });

  it('is half on an edge, and on the moved edge where the process widens windows', () => {
    const wide = handDisc({ positions: 8, process: { windowGrowthMm: 0.4 } });
    const seen = seenTrack(wide, 0, { shape: 'round', diameterMm: 1 });
    const moved = radToDeg(Math.asin(0.2 / seen.radiusMm));
    for (const [i, edge] of seen.edgesDeg.entries()) {
      const outwards = seen.gains[i]! > 0 ? -moved : moved;
      expect(lightLevel(seen, edge + outwards)).toBeCloseTo(0.5, 9);
      expect(lightLevel(seen, edge)).toBeCloseTo(0.5 + 0.5 * lightShareInside(0.4), 9);
    }
  });

  it('dips where a rib crosses the spot, by what the rib covers of it', () => {
    const ribs = [
      { innerRadiusMm: 13, outerRadiusMm: 17, fromDeg: 314, toDeg: 316 },
      { innerRadiusMm: 15, outerRadiusMm: 17, fromDeg: 224, toDeg: 226 },
    ];
    const ribbed = handDisc({ positions: 8, ribs });
    const track = ribbed.code.tracks[0]!;
    expect([levelAt(track, 315), levelAt(track, 225)]).toEqual([1, 1]);
    const seen = seenTrack(ribbed, 0, { shape: 'slit', widthMm: 1, lengthMm: 4 });
    const covered = (2 * degToRad(1) * 15) / 1;
    expect(lightLevel(seen, 315)).toBeCloseTo(1 - covered, 3);
    expect(lightLevel(seen, 225)).toBeCloseTo(1 - covered / 2, 3);
    expect(lightLevel(seen, 270)).toBe(1);
  });

  it('is the same everywhere on a track without edges', () => {
    const plain = { ...disc, tracks: [{ ...disc.tracks[0]!, windows: [] }, ...disc.tracks.slice(1)] };
    expect(lightLevel(seenTrack(plain, 0, { shape: 'round', diameterMm: 1 }), 77)).toBe(0);
    const ring = { innerRadiusMm: 13, outerRadiusMm: 17, fromDeg: 0, toDeg: 360 };
    const open = { ...disc, tracks: [{ ...disc.tracks[0]!, windows: [ring] }, ...disc.tracks.slice(1)] };
    expect(lightLevel(seenTrack(open, 0, { shape: 'round', diameterMm: 1 }), 77)).toBe(1);
  });
});

/** Share of a 1 mm round spot inside a band of that width about its middle, by the area of a circle's zone. */
function lightShareInside(bandMm: number): number {
  const u = bandMm;
  return (2 * (Math.asin(u) + u * Math.sqrt(1 - u * u))) / Math.PI;
}
