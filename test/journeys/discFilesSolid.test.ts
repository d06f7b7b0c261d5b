import { describe, expect, it } from 'vitest';
import { buildCode } from '../../src/core/codes/index.ts';
import { discAreaMm2, planDisc, processDefaults } from '../../src/core/disc/index.ts';
import { discStl } from '../../src/core/make/index.ts';
import { admeshReport, SOUND } from '../support/admesh.ts';
import { misreadings } from '../support/discReadings.ts';
import { discKinds, jettyDisc } from '../support/discSpecs.ts';
import { readStl } from '../support/stlReader.ts';

const solidKinds = discKinds.filter(({ spec }) => spec.process.kind !== 'film');

function solidOf({ spec, positions }: (typeof discKinds)[number]) {
  const plan = planDisc(buildCode(spec.code, positions), spec);
  return { bytes: discStl(plan)!, volumeMm3: discAreaMm2(plan) * spec.thicknessMm };
}

describe('a disc as a solid, read back from its file by separate code', () => {
  it.each(solidKinds)('decodes to the intended position all round: $name', (kind) => {
    const solid = readStl(solidOf(kind).bytes);
    // A side of the mesh may lie 0.01 mm off its arc, but the straight edges of windows are exact.
    const { wrong, read } = misreadings(
      kind.spec,
      kind.positions,
      0.001,
      (x, y) => solid.crossingsAt(x, y) === 2,
    );
    expect(wrong).toEqual([]);
    expect(read).toBeGreaterThan(3000);
  });

  it.each(solidKinds)('is called watertight, whole and in need of no repair by admesh: $name', (kind) => {
    const { bytes, volumeMm3 } = solidOf(kind);
    const report = admeshReport(bytes);
    const facets = readStl(bytes).facets.length;
    expect(report).toMatchObject({
      'Number of facets': [facets, facets],
      'Number of parts': [1],
      ...SOUND,
    });
    expect(Math.abs(report['Volume']![0]! / volumeMm3 - 1)).toBeLessThan(0.001);
  });

  it('has every facet looking outward: its volume comes out positive, and right to 0.1 %', () => {
    const { bytes, volumeMm3 } = solidOf(solidKinds[0]!);
    expect(Math.abs(readStl(bytes).volume / volumeMm3 - 1)).toBeLessThan(0.001);
  });

  it('is the same to the last byte when made again', () => {
    expect(
      Buffer.from(solidOf(solidKinds[0]!).bytes).equals(Buffer.from(solidOf(solidKinds[0]!).bytes)),
    ).toBe(true);
  });

  it('says it is binary: its header does not begin like a text file', () => {
    expect(readStl(solidOf(solidKinds[0]!).bytes).header).toBe('vanewright disc, millimetres');
  });

  it('lies flat between z = 0 and its thickness, patterned face up', () => {
    const heights = new Set(
      readStl(solidOf(solidKinds[0]!).bytes).facets.flatMap(({ corners }) => corners.map((c) => c[2])),
    );
    expect([...heights].sort()).toEqual([0, 2]);
  });

  it('is not made for film, whose print has no thickness', () => {
    const film = { ...jettyDisc, process: processDefaults.film };
    expect(discStl(planDisc(buildCode('reflected-gray', 32), film))).toBeNull();
  });
});

describe('admesh', () => {
  it('does see a solid that is not whole', () => {
    const { bytes } = solidOf(solidKinds[0]!);
    const torn = bytes.slice(0, bytes.length - 50);
    new DataView(torn.buffer).setUint32(80, (torn.length - 84) / 50, true);
    expect(admeshReport(torn)['Total disconnected facets']![0]).toBeGreaterThan(0);
  });
});
