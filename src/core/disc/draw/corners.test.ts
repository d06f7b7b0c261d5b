import { describe, expect, it } from 'vitest';
import { jettyDisc } from '../../../../test/support/discSpecs.ts';
import { runsOutward, runsRound } from '../../../../test/support/discMeasure.ts';
import { readSvg } from '../../../../test/support/svgReader.ts';
import { buildCode } from '../../codes/index.ts';
import { discSvg } from '../../make/index.ts';
import { degToRad } from '../../units/index.ts';
import type { Bore, Drawn } from '../discSpec.ts';
import { planDisc } from '../planDisc.ts';

const KERF_MM = 0.3;

/** Drawn for a cut this wide: every edge half of it outside the part. */
const forKerf = (kerf: number, bore: Bore = jettyDisc.bore) => {
  const drawn: Drawn = { scale: 1, edgeLossMm: kerf / 2, boreAllowanceMm: -kerf, footGrowthMm: 0 };
  const plan = planDisc(buildCode('reflected-gray', 32), { ...jettyDisc, bore, drawn });
  const drawing = readSvg(discSvg(plan));
  return (x: number, y: number) => drawing.isInside(x, -y);
};

describe('a disc drawn for the width of the cut', () => {
  it.each([KERF_MM, -KERF_MM])(
    'has every straight edge half of it aside, whole and parallel: kerf %s mm',
    (kerf) => {
      const [wanted, drawn] = [forKerf(0), forKerf(kerf)];
      for (const radius of [14.2, 16, 18, 25, 30, 36]) {
        const runs = runsRound(wanted, radius).filter(({ isMaterial }) => !isMaterial);
        const smaller = runsRound(drawn, radius).filter(({ isMaterial }) => !isMaterial);
        expect(smaller.length).toBe(runs.length);
        for (const [index, { from, to }] of runs.entries()) {
          // Distance of a place on the drawn edge from the line along the wanted radius.
          const aside = radius * Math.sin(degToRad(smaller[index]!.from - from));
          expect(aside).toBeCloseTo(kerf / 2, 4);
          expect(radius * Math.sin(degToRad(to - smaller[index]!.to))).toBeCloseTo(kerf / 2, 4);
        }
      }
    },
  );

  it('has holes drawn narrower and the part itself wider', () => {
    const drawn = forKerf(KERF_MM);
    // Straight out at 100 degrees: hub, windows and webs, rim; the outer edge 0.15 mm beyond 40 mm.
    const wanted = runsOutward(forKerf(0), 100, 4, 41);
    const runs = runsOutward(drawn, 100, 4, 41);
    expect(runs.length).toBe(wanted.length);
    expect(wanted.at(-1)!.from).toBeCloseTo(40, 3);
    for (const [index, { isMaterial, from }] of runs.entries()) {
      if (index === 0) continue;
      expect(from - wanted[index]!.from).toBeCloseTo(isMaterial ? -KERF_MM / 2 : KERF_MM / 2, 4);
    }
  });

  it.each<[string, Bore, number, number]>([
    // Half of 5 less half the cut; the flat 4.5 - 2.5 = 2 from the middle.
    ['round', { shape: 'round', diameterMm: 5 }, 2.35, 2.35],
    ['D', { shape: 'd', diameterMm: 5, acrossFlatMm: 4.5 }, 1.85, 2.35],
    // A hexagon over flats of 5: 2.5 to the flat, and as much to the opposite one.
    ['hex', { shape: 'hex', diameterMm: 5 }, 2.35, 2.35],
  ])('has its bore drawn smaller: %s', (_, bore, towardsIndexMm, awayMm) => {
    const drawn = forKerf(KERF_MM, bore);
    const edgeAt = (angle: number) => runsOutward(drawn, angle, 0.5, 4)[0]!.to;
    expect(edgeAt(0)).toBeCloseTo(towardsIndexMm, 4);
    expect(edgeAt(180)).toBeCloseTo(awayMm, 4);
  });

  it('has the corners of a hexagon where its flats meet', () => {
    const drawn = forKerf(0, { shape: 'hex', diameterMm: 5 });
    expect(runsOutward(drawn, 30, 0.5, 4)[0]!.to).toBeCloseTo(5 / Math.sqrt(3), 4);
    expect(runsOutward(drawn, 90, 0.5, 4)[0]!.to).toBeCloseTo(5 / Math.sqrt(3), 4);
  });

  it('is drawn larger where prints come out smaller', () => {
    const drawn: Drawn = { scale: 1 / 0.94, edgeLossMm: 0, boreAllowanceMm: 0, footGrowthMm: 0 };
    const plan = planDisc(buildCode('reflected-gray', 32), { ...jettyDisc, drawn });
    const drawing = readSvg(discSvg(plan));
    const edge = runsOutward((x, y) => drawing.isInside(x, -y), 100, 41, 44)[0]!;
    expect(edge.to).toBeCloseTo(40 / 0.94, 4);
  });
});
