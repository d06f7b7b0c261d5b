import fc from 'fast-check';
import { afterAll, describe, expect, it } from 'vitest';
import { buildCode } from '../../src/core/codes/index.ts';
import {
  discAreaMm2,
  planDisc,
  processDefaults,
  type DiscPlan,
  type DiscSpec,
} from '../../src/core/disc/index.ts';
import { VanewrightError } from '../../src/core/error/index.ts';
import { discStl, discSvg } from '../../src/core/make/index.ts';
import { pieceCount, runsOutward, runsRound, type Looks } from '../support/discMeasure.ts';
import { misreadings, sensorRadiusMm, wordOf } from '../support/discReadings.ts';
import { readStl } from '../support/stlReader.ts';
import { readSvg } from '../support/svgReader.ts';

/** A length to 0.01 mm. */
const mm = (min: number, max: number) => fc.integer({ min: min * 100, max: max * 100 }).map((n) => n / 100);
const noneOr = (length: fc.Arbitrary<number>) => fc.oneof(fc.constant(0), length);

const anySpec: fc.Arbitrary<DiscSpec> = fc.record({
  code: fc.constantFrom('reflected-gray', 'natural-binary'),
  codeFile: fc.constant(null),
  codeOptions: fc.constant({}),
  diameterMm: mm(60, 160),
  bore: fc.oneof(
    mm(2, 8).map((diameterMm) => ({ shape: 'round' as const, diameterMm })),
    mm(2, 8).map((diameterMm) => ({ shape: 'hex' as const, diameterMm })),
    mm(3, 8).map((diameterMm) => ({ shape: 'd' as const, diameterMm, acrossFlatMm: 0.9 * diameterMm })),
  ),
  hubDiameterMm: mm(8, 50),
  thicknessMm: mm(1, 4),
  webMm: noneOr(mm(0.7, 2)),
  rimMm: noneOr(mm(0.7, 5)),
  finest: fc.constantFrom('outside', 'inside'),
  windowLevel: fc.constantFrom(0, 1),
  notch: fc.oneof(
    fc.constant({ widthMm: 0, depthMm: 0 }),
    fc.record({ widthMm: mm(1, 5), depthMm: mm(0.5, 3) }),
  ),
  process: fc.constantFrom(processDefaults.fdm, processDefaults.laser, processDefaults.film),
});
const anyPositions = fc.integer({ min: 1, max: 32 }).map((half) => 2 * half);

/** The plan, or `null` where it is refused as it should be; anything else thrown fails the test. */
function planOrRefusal(spec: DiscSpec, positions: number): DiscPlan | null {
  try {
    return planDisc(buildCode(spec.code, positions), spec);
  } catch (error) {
    if (error instanceof VanewrightError && error.problems.every(({ code }) => code.startsWith('disc/')))
      return null;
    throw error;
  }
}

/** From the axis to the farthest place of the bore: a corner of a hexagon lies 1/√3 of its flats out. [mm] */
const boreRadiusMm = ({ bore }: DiscSpec) => bore.diameterMm / (bore.shape === 'hex' ? Math.sqrt(3) : 2);

/** Just inside an edge: past the rounding of the file. [mm] */
const PAST_MM = 0.001;

function tooNarrow(spec: DiscSpec, tracks: number, looks: Looks): string[] {
  const { minWindowMm, minLandMm, minWebMm } = spec.process;
  const problems: string[] = [];
  const room = (spec.diameterMm - spec.hubDiameterMm) / 2 - spec.rimMm;
  const half = (room - (tracks - 1) * spec.webMm) / tracks / 2;
  for (let track = 0; track < tracks; track++) {
    const radius = sensorRadiusMm(spec, tracks, track) - half + PAST_MM;
    for (const { isMaterial, from, to } of runsRound(looks, radius)) {
      const length = ((to - from) * Math.PI * radius) / 180;
      if (length < (isMaterial ? minLandMm : minWindowMm) - PAST_MM)
        problems.push(`${length} mm round, track ${track}`);
    }
  }
  for (let angle = 0.05; angle < 360; angle += 3.7) {
    const runs = runsOutward(looks, angle, boreRadiusMm(spec) + PAST_MM, spec.diameterMm / 2 - PAST_MM);
    for (const [i, { isMaterial, from, to }] of runs.entries()) {
      if (!isMaterial && i === runs.length - 1) continue; // open to the outside
      if (to - from < (isMaterial ? minWebMm : minWindowMm) - 3 * PAST_MM)
        problems.push(`${to - from} mm outward, ${angle}°`);
    }
  }
  return problems;
}

describe('any disc asked for', () => {
  let planned = 0;
  let ribbed = 0;

  it('is refused with reasons, or drawn in one piece with nothing smaller than the process can make', () => {
    fc.assert(
      fc.property(anySpec, anyPositions, (spec, positions) => {
        const plan = planOrRefusal(spec, positions);
        if (!plan) return;
        planned++;
        if (plan.ribs.length > 0) ribbed++;
        const drawing = readSvg(discSvg(plan));
        const looks: Looks = (x, y) => drawing.isInside(x, -y);
        expect(misreadings(spec, positions, 0.001, looks).wrong).toEqual([]);
        expect(tooNarrow(spec, wordOf(spec.code, positions, 0).length, looks)).toEqual([]);
        if (spec.process.kind === 'film') return;
        expect(pieceCount(looks, boreRadiusMm(spec), spec.diameterMm / 2, 0.3)).toBe(1);
      }),
      { seed: 20250611, numRuns: 60 },
    );
  });

  it('is meshed, where it is solid, so that every side of a facet meets one other the other way round', () => {
    fc.assert(
      fc.property(anySpec, anyPositions, (spec, positions) => {
        const plan = planOrRefusal(spec, positions);
        const bytes = plan && discStl(plan);
        if (!bytes) return;
        const { facets, volume } = readStl(bytes);
        const sides = new Map<string, number>();
        for (const { corners } of facets) {
          for (let i = 0; i < 3; i++) {
            const [a, b] = [corners[i]!.join(' '), corners[(i + 1) % 3]!.join(' ')];
            const key = a < b ? `${a} | ${b}` : `${b} | ${a}`;
            sides.set(key, (sides.get(key) ?? 0) + (a < b ? 1 : -1) + 1000);
          }
        }
        // Two facets a side, once each way: 2 x 1000 and no turn left over.
        expect([...sides.values()].every((count) => count === 2000)).toBe(true);
        expect(Math.abs(volume / (discAreaMm2(plan) * spec.thicknessMm) - 1)).toBeLessThan(0.001);
      }),
      { seed: 20250611, numRuns: 60 },
    );
  });

  afterAll(() => {
    expect(planned).toBeGreaterThan(15);
    expect(ribbed).toBeGreaterThan(0);
  });
});
