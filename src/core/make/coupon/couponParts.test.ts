import { describe, expect, it } from 'vitest';
import { exampleInstrument } from '../../../../test/support/plannedHead.ts';
import { processDefaults, type Process } from '../../disc/index.ts';
import { meshBox, meshVolumeMm3 } from '../solids/meshFacts.ts';
import { couponLayout, MARK_WIDTHS_MM } from './couponLayout.ts';
import { couponParts } from './couponParts.ts';

function couponFor(kind: Process['kind']) {
  const jetty = exampleInstrument('jetty');
  return { ...jetty, disc: { ...jetty.disc, process: processDefaults[kind], thicknessMm: 2 } };
}

/** Straight-sided outlines of a path, as corners: own reading of the SVG path language, moves and lines only. */
function outlinesOf(svg: string, id: string): [number, number][][] {
  const data = new RegExp(`id="${id}" d="([^"]*)"`).exec(svg)![1]!;
  return data
    .split('Z')
    .filter((text) => text.includes('L'))
    .map((text) => [...text.matchAll(/[ML](\S+) (\S+)/g)].map(([, x, y]) => [Number(x), -Number(y)]));
}

function widthOf(outline: readonly (readonly [number, number])[]): number {
  const xs = outline.map(([x]) => x);
  return Math.max(...xs) - Math.min(...xs);
}

const rounded = (value: number): number => Math.round(value * 1000) / 1000;

describe('the coupon to be cut', () => {
  it('has a slot of each labelled width, to the micrometre, and nothing is corrected', async () => {
    const { sheets, solids } = await couponParts(couponFor('laser'));
    expect(solids).toEqual([]);
    const widths = outlinesOf(sheets[0]!.svg, 'cut').map(widthOf).map(rounded);
    for (const width of MARK_WIDTHS_MM) expect(widths).toContain(width);
  });

  it('has a bar of 50 mm and a tongue of each labelled width on its edge', async () => {
    const { sheets } = await couponParts(couponFor('laser'));
    const [edge] = outlinesOf(sheets[0]!.svg, 'cut');
    const lowest = Math.min(...edge!.map(([, y]) => y));
    expect(rounded(widthOf(edge!.filter(([, y]) => y === lowest)))).toBe(50);
    const highest = Math.max(...edge!.map(([, y]) => y));
    const tips = edge!.filter(([, y]) => y === highest).map(([x]) => x);
    const tongues = Array.from({ length: tips.length / 2 }, (_, i) =>
      rounded(Math.abs(tips[2 * i]! - tips[2 * i + 1]!)),
    );
    expect(tongues.sort((a, b) => a - b)).toEqual([...MARK_WIDTHS_MM]);
  });

  it('is drawn so that one unit is one millimetre', async () => {
    const { svg } = (await couponParts(couponFor('laser'))).sheets[0]!;
    const [, width, height, box] = /width="([\d.]+)mm" height="([\d.]+)mm" viewBox="([^"]*)"/.exec(svg)!;
    expect(box!.split(' ').slice(2)).toEqual([width, height]);
  });

  it('comes with a loose square of the same sheet, to be laid over it as a second layer', async () => {
    const { tile } = couponLayout(couponFor('laser'));
    const all = outlinesOf((await couponParts(couponFor('laser'))).sheets[0]!.svg, 'cut');
    expect(tile).toHaveLength(1);
    expect(all.filter((outline) => rounded(widthOf(outline)) === 14)).toHaveLength(1);
  });

  it('is printed black on film', async () => {
    const { svg } = (await couponParts(couponFor('film'))).sheets[0]!;
    expect(svg).toContain('id="print"');
    expect(svg).not.toContain('stroke');
  });
});

describe('the coupon to be printed', () => {
  it('is as thick as the disc, twice that in window 2, and stands on the bed', async () => {
    const [solid] = (await couponParts(couponFor('fdm'))).solids;
    expect(meshBox(solid!.mesh).low[2]).toBe(0);
    expect(meshBox(solid!.mesh).high[2]).toBe(4);
  });

  it('has the volume of its plate, its pad and its labels', async () => {
    const [solid] = (await couponParts(couponFor('fdm'))).solids;
    // By hand, from the sizes that are told: plate 83 wide, low edge below four rows.
    const { plate, labels } = couponLayout(couponFor('fdm'));
    const shoelace = (line: (typeof plate)[number]): number => {
      if (line.kind === 'circle') return Math.PI * line.radiusMm ** 2;
      return Math.abs(
        line.corners.reduce((sum, [x, y], i) => {
          const [nextX, nextY] = line.corners[(i + 1) % line.corners.length]!;
          return sum + (x * nextY - nextX * y) / 2;
        }, 0),
      );
    };
    const [outer, ...holes] = plate.map(shoelace);
    const plateMm2 = outer! - holes.reduce((sum, hole) => sum + hole, 0);
    const labelMm2 = labels.map(shoelace).reduce((sum, area) => sum + area, 0);
    const expected = plateMm2 * 2 + 10 * 10 * 2 + labelMm2 * 0.6;
    expect(meshVolumeMm3(solid!.mesh) / expected).toBeCloseTo(1, 5);
  });

  it('holes round the shaft are labelled with their drawn size, 0.2 mm apart', () => {
    const holes = couponLayout(couponFor('fdm')).sizes.filter(({ name }) => name.startsWith('hole'));
    expect(holes.map(({ mm }) => mm)).toEqual([4.8, 5, 5.2, 5.4, 5.6]);
  });
});
