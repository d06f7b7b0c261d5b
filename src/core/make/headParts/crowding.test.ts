import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { exampleInstrument, plannedHead } from '../../../../test/support/plannedHead.ts';
import { staggeredHead } from '../../../../test/support/staggeredHead.ts';
import { problemsOf } from '../../../../test/support/problemsOf.ts';
import type { DiscSpec } from '../../disc/index.ts';
import type { HeadPlan, PartName } from '../../head/index.ts';
import { partBodies } from '../../head/index.ts';
import type { PartsSpec } from '../../instrument/index.ts';
import { circleOutline, movedOutline, rectangleOutline } from '../solids/outline.ts';
import { printSetting } from '../solids/print.ts';
import { chosenBodies } from './chosenBodies.ts';
import { headBuild } from './headBuild.ts';
import { outlineGapMm } from './outlineGap.ts';

function headOf(disc: Partial<DiscSpec> = {}): HeadPlan {
  return plannedHead(exampleInstrument('jetty', disc));
}

function problemsWith(head: HeadPlan, parts: Partial<PartsSpec> = {}) {
  const all = { ...exampleInstrument('jetty').parts, ...parts };
  return headBuild(head, printSetting(head.disc.spec, all), all).problems;
}

const codesOf = (problems: readonly { readonly code: string }[]) => problems.map(({ code }) => code);

describe('the gap between two openings', () => {
  it('is that of the closed form for circles and boxes side by side', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.5, max: 6, noNaN: true }),
        fc.double({ min: 0.5, max: 6, noNaN: true }),
        fc.double({ min: 0.05, max: 9, noNaN: true }),
        fc.double({ min: 0, max: 6.28, noNaN: true }),
        (a, b, gap, way) => {
          const apart = a + b + gap;
          const other = circleOutline(b, [apart * Math.cos(way), apart * Math.sin(way)]);
          expect(Math.abs(outlineGapMm(circleOutline(a), other) - gap)).toBeLessThan(0.03);
          const box = movedOutline(rectangleOutline([2 * b, 2]), [a + b + gap, 0]);
          expect(outlineGapMm(rectangleOutline([2 * a, 3]), box)).toBeCloseTo(gap, 9);
        },
      ),
      { seed: 20261125 },
    );
  });

  it('is 0 where they overlap', () => {
    expect(outlineGapMm(circleOutline(3), circleOutline(3, [4, 0]))).toBe(0);
  });
});

describe('sensors that stand too close', () => {
  const tooClose = headOf({ diameterMm: 84 });

  it('are refused, with every cure worked out', () => {
    const [problem] = problemsWith(tooClose);
    expect(problem).toMatchObject({ code: 'make/parts-too-close', where: 'parts.sensorPart' });
    expect(problem!.fix).toMatch(
      /head.staggerDeg to \d+.*parts.sensorPart to round-3mm.*disc.diameterMm \d+/,
    );
  });

  it('fit on the larger disc that is named, and not on one a millimetre smaller', () => {
    const [problem] = problemsWith(tooClose);
    const wide = Number(/disc.diameterMm (\d+)/.exec(problem!.fix)![1]);
    expect(problemsWith(headOf({ diameterMm: wide }))).toEqual([]);
    expect(codesOf(problemsWith(headOf({ diameterMm: wide - 1 })))).toEqual(['make/parts-too-close']);
  });

  it('fit with the smaller part that is named', () => {
    expect(problemsWith(tooClose, { sensorPart: 'round-3mm' })).toEqual([]);
  });

  it('fit with the stagger that is named, and not with half of it', () => {
    const [problem] = problemsWith(tooClose);
    const stagger = Number(/head.staggerDeg to (\d+)/.exec(problem!.fix)![1]);
    expect(problemsWith(staggeredHead(tooClose, stagger))).toEqual([]);
    expect(codesOf(problemsWith(staggeredHead(tooClose, stagger / 2)))).toEqual(['make/parts-too-close']);
  });
});

describe('parts that cannot do their job', () => {
  it.each([
    { sensorPart: 'round-3mm', lightPart: 'photoresistor-5mm', where: 'parts.lightPart' },
    { sensorPart: 'round-3mm', lightPart: 'slot-pair', where: 'parts.lightPart' },
  ] as const)('are told: $lightPart as a light', ({ where, ...parts }) => {
    expect(problemsWith(headOf({ diameterMm: 90 }), parts)).toMatchObject([
      { code: 'make/part-unfit', where },
    ]);
  });

  it('are none of the sensors in the table', () => {
    const { parts } = exampleInstrument('jetty');
    for (const sensorPart of Object.keys(partBodies) as PartName[]) {
      expect(problemsOf(() => chosenBodies({ ...parts, sensorPart }))).toEqual([]);
    }
  });
});

describe('a head that cannot be printed', () => {
  it('is told when its openings are finer than the printer leaves open', () => {
    const head = headOf({ diameterMm: 90 });
    const spec = { ...head.spec, aperture: { shape: 'slit', widthMm: 0.6, lengthMm: 2 } } as const;
    expect(codesOf(problemsWith({ ...head, spec }))).toEqual(['make/aperture-too-fine']);
  });

  it('is told when its holder would rub on the shaft', () => {
    const head = headOf({ diameterMm: 110, hubDiameterMm: 11 });
    const thick = { ...head.disc.spec, bore: { shape: 'round', diameterMm: 8 } } as const;
    const onThickShaft = { ...head, disc: { ...head.disc, spec: thick } };
    expect(codesOf(problemsWith(onThickShaft))).toEqual(['make/head-meets-shaft']);
  });

  it('is told when no bearing fits its shaft', () => {
    const head = headOf({ diameterMm: 90, bore: { shape: 'round', diameterMm: 5.3 } });
    const [problem] = problemsWith(head);
    expect(problem).toMatchObject({ code: 'make/no-bearing', fix: 'Set disc.bore.diameterMm to 5.' });
  });

  it('is told when a slotted pair cannot reach the track, or the disc does not fit its slot', () => {
    const problems = problemsWith(headOf({ diameterMm: 90, thicknessMm: 3 }), {
      sensorPart: 'slot-pair',
    });
    expect(codesOf(problems)).toEqual(
      expect.arrayContaining(['make/slot-too-shallow', 'make/slot-too-narrow']),
    );
  });
});
