import { describe, expect, it } from 'vitest';
import { admeshReport, SOUND } from '../../../../test/support/admesh.ts';
import { jettyDisc } from '../../../../test/support/discSpecs.ts';
import { readStl } from '../../../../test/support/stlReader.ts';
import { processDefaults, type DiscSpec, type HubSpec } from '../../disc/index.ts';
import { meshStl } from '../solids/meshStl.ts';
import type { PrintSetting } from '../solids/print.ts';
import { withShapes } from '../solids/shapeKit.ts';
import { hubParts } from './hubPart.ts';

const print: PrintSetting = {
  process: processDefaults.fdm,
  corrections: { scale: 1, edgeLossMm: 0, boreAllowanceMm: 0, footGrowthMm: 0 },
  bedMm: 200,
  layerMm: 0.2,
};

function made(hub: HubSpec, changes: Partial<DiscSpec> = {}) {
  return withShapes((kit) => {
    const { parts, problems } = hubParts(kit, { ...jettyDisc, ...changes, hub }, print);
    return { bytes: parts[0] ? meshStl(parts[0].solid) : null, problems };
  });
}

/** Through holes of one whole solid: corners - sides + faces = 2 - 2 holes, and three sides for two faces. */
function holesOf(bytes: Uint8Array): number {
  const { facets } = readStl(bytes);
  const corners = new Set(facets.flatMap(({ corners: places }) => places.map((place) => place.join(' '))));
  return 1 - (corners.size - facets.length / 2) / 2;
}

describe('a hub that is glued to the disc', () => {
  it('is not printed where the bore is enough', async () => {
    expect(await made({ kind: 'plain' })).toEqual({ bytes: null, problems: [] });
  });

  it('seats a bearing: plate, ring and ledge in closed form', async () => {
    const { bytes } = await made({
      kind: 'bearing-seat',
      bearingDiameterMm: 16,
      bearingWidthMm: 5,
      clearanceMm: 0.1,
    });
    expect(admeshReport(bytes!)).toMatchObject({ ...SOUND, 'Number of parts': [1] });
    const disc = (diameter: number) => (Math.PI / 4) * diameter ** 2;
    // Plate of 28 mm with a hole of 16.1 less two ledges of 1.5; ring of 16.1 and two walls of 2.5.
    const volume = 2 * (disc(28) - disc(13.1)) + 5 * (disc(21.1) - disc(16.1));
    expect(Math.abs(readStl(bytes!).volume / volume - 1)).toBeLessThan(0.001);
    expect(holesOf(bytes!)).toBe(1);
  });

  it('clamps the shaft: a ring split on one side, a screw across the split', async () => {
    const { bytes } = await made({ kind: 'clamp', heightMm: 10, screwMm: 3 });
    expect(admeshReport(bytes!)).toMatchObject({ ...SOUND, 'Number of parts': [1] });
    const solid = readStl(bytes!);
    // The slit is open down to the plate; the ring stands on the other side of the axis.
    expect(solid.topAt(0.01, 8.01)).toBeCloseTo(2, 6);
    expect(solid.topAt(0.01, -8.01)).toBeCloseTo(12, 6);
    // Bore, and one hole for the screw in each ear.
    expect(holesOf(bytes!)).toBe(3);
  });

  it('takes the bore of the disc, its flat towards the index mark', async () => {
    const { bytes } = await made({ kind: 'clamp', heightMm: 10, screwMm: 3 });
    const solid = readStl(bytes!);
    expect([solid.topAt(1.01, -2.6), solid.topAt(1.01, -2.2)]).toEqual([expect.closeTo(12, 6), null]);
    // The slit runs out over the flat, above the plate.
    expect([solid.topAt(0.01, 2.1), solid.topAt(0.01, 1.9)]).toEqual([expect.closeTo(2, 6), null]);
  });

  it('is refused where it would cover the innermost track', async () => {
    const { bytes, problems } = await made(
      { kind: 'clamp', heightMm: 10, screwMm: 3 },
      { hubDiameterMm: 16 },
    );
    expect(bytes).toBeNull();
    expect(problems.map(({ code, fix }) => [code, fix])).toEqual([
      ['make/hub-too-small', 'Set disc.hubDiameterMm to 19, or take a smaller screw.'],
    ]);
  });
});
