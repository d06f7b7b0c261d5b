import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { processDefaults } from '../processDefaults.ts';
import { contrastOf } from './contrast.ts';
import {
  correctionsFrom,
  drawnBoreMm,
  drawnHoleMm,
  drawnIslandMm,
  drawnPlaceMm,
  measuredProcess,
} from './corrections.ts';
import { UNMEASURED } from './couponReadings.ts';
import { readingProblems } from './readingProblems.ts';

/** A machine with a known fault: what comes out of what is drawn. Written apart from the corrections. */
function machine(scale: number, edgeLoss: number) {
  return {
    hole: (drawn: number) => drawn * scale + edgeLoss + edgeLoss,
    island: (drawn: number) => drawn * scale - edgeLoss - edgeLoss,
  };
}

/** The coupon as that machine makes it, measured without error. */
function measuredOn({ hole, island }: ReturnType<typeof machine>) {
  return { ...UNMEASURED, barMm: island(50), slotMm: hole(2), landMm: island(2) };
}

describe('corrections', () => {
  it.each([
    { name: 'a laser whose cut is 0.2 mm wide', scale: 1, loss: 0.1 },
    { name: 'a printer whose walls grow by 0.15 mm', scale: 1, loss: -0.15 },
    { name: 'a film fitted to the page', scale: 0.94, loss: 0.01 },
  ])('bring hole and island to their true size on $name', ({ scale, loss }) => {
    const made = machine(scale, loss);
    const corrections = correctionsFrom(processDefaults.laser, measuredOn(made), 5);
    expect(corrections.scale).toBeCloseTo(1 / scale, 12);
    expect(corrections.edgeLossMm).toBeCloseTo(loss, 12);
    expect(made.hole(drawnHoleMm(corrections, 7))).toBeCloseTo(7, 12);
    expect(made.island(drawnIslandMm(corrections, 7))).toBeCloseTo(7, 12);
    expect(scale * drawnPlaceMm(corrections, 30)).toBeCloseTo(30, 12);
  });

  it('draw a hole smaller and an island larger where a laser takes material away', () => {
    const corrections = correctionsFrom(
      processDefaults.laser,
      { ...UNMEASURED, slotMm: 2.2, landMm: 1.8 },
      5,
    );
    expect(drawnHoleMm(corrections, 5)).toBeCloseTo(4.8, 12);
    expect(drawnIslandMm(corrections, 5)).toBeCloseTo(5.2, 12);
  });

  it('draw a hole larger and an island smaller where a print grows', () => {
    const corrections = correctionsFrom(processDefaults.fdm, { ...UNMEASURED, slotMm: 1.7, landMm: 2.3 }, 5);
    expect(drawnHoleMm(corrections, 5)).toBeCloseTo(5.3, 12);
    expect(drawnIslandMm(corrections, 5)).toBeCloseTo(4.7, 12);
  });

  it('are right for any machine, from two marks or from three', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.9, max: 1.1, noNaN: true }),
        fc.double({ min: -0.4, max: 0.4, noNaN: true }),
        fc.constantFrom<'slotMm' | 'landMm' | null>('slotMm', 'landMm', null),
        (scale, loss, leftOut) => {
          const readings = { ...measuredOn(machine(scale, loss)), ...(leftOut ? { [leftOut]: null } : {}) };
          const corrections = correctionsFrom(processDefaults.fdm, readings, 5);
          expect(corrections.scale).toBeCloseTo(1 / scale, 9);
          expect(corrections.edgeLossMm).toBeCloseTo(loss, 9);
        },
      ),
      { seed: 20261125 },
    );
  });

  it('take the usual growth of the process where nothing was measured', () => {
    const { scale, edgeLossMm } = correctionsFrom(processDefaults.fdm, UNMEASURED, 5);
    expect([scale, 2 * edgeLossMm]).toEqual([1, processDefaults.fdm.windowGrowthMm]);
  });

  it('take the scale from the bar alone, the usual growth of its ends left out', () => {
    const { scale } = correctionsFrom(processDefaults.fdm, { ...UNMEASURED, barMm: 50.2 }, 5);
    expect(scale).toBeCloseTo(1, 12); // each end of a print grows by 0.1 mm
  });

  it('draw a bore like the hole of the coupon that the shaft went into', () => {
    const corrections = correctionsFrom(processDefaults.fdm, { ...UNMEASURED, boreLabelMm: 5.4 }, 5);
    expect(drawnBoreMm(corrections, 5)).toBeCloseTo(5.4, 12);
    expect(drawnBoreMm(corrections, 8)).toBeCloseTo(8.4, 12);
  });

  it('leave a shaft its play in a hole that comes out as on the coupon, whatever the scale', () => {
    const made = machine(0.97, -0.1);
    const corrections = correctionsFrom(processDefaults.fdm, measuredOn(made), 5);
    expect(made.hole(drawnBoreMm(corrections, 8)) - 8).toBeCloseTo(0.1, 12);
  });

  it('halve a squeezed first layer between its two edges', () => {
    expect(correctionsFrom(processDefaults.fdm, { ...UNMEASURED, footMm: 0.3 }, 5).footGrowthMm).toBe(0.15);
  });
});

describe('a measured process', () => {
  const measured = (readings: Partial<typeof UNMEASURED>, process = processDefaults.fdm) =>
    measuredProcess({ ...process, measured: { ...UNMEASURED, ...readings } }, 5);

  it('no longer grows windows: its drawings make that good', () => {
    const { process, drawn } = measured({ slotMm: 2.16, landMm: 1.84 }, processDefaults.laser);
    expect(process.windowGrowthMm).toBe(0);
    expect(drawn!.edgeLossMm).toBeCloseTo(0.08, 12);
  });

  it('tells the narrowest marks as they came out, not by their labels', () => {
    const { process } = measured({ slotMm: 1.8, landMm: 2.2, narrowestSlotMm: 0.8, narrowestLandMm: 0.6 });
    expect(process.minWindowMm).toBeCloseTo(0.6, 12);
    expect(process.minLandMm).toBeCloseTo(0.8, 12);
  });

  it('is left as it was, and drawn as wanted, while no size was measured', () => {
    const process = { ...processDefaults.fdm, measured: UNMEASURED };
    expect(measuredProcess(process, 5)).toEqual({ process, drawn: null });
    expect(measuredProcess(processDefaults.fdm, 5)).toEqual({ process: processDefaults.fdm, drawn: null });
  });
});

describe('contrast', () => {
  it.each([
    { oneLayer: 5, twoLayers: 1, verdict: 'one layer' },
    { oneLayer: 20, twoLayers: 6, verdict: 'two layers' },
    { oneLayer: 60, twoLayers: 40, verdict: 'neither' },
  ] as const)(
    'of 100 open and $oneLayer, $twoLayers behind: $verdict stops the light',
    ({ verdict, ...read }) => {
      expect(contrastOf({ open: 100, ...read })).toMatchObject({ verdict, ratio: 100 / read.oneLayer });
    },
  );
});

describe('readings that cannot be right', () => {
  const codes = (readings: Partial<typeof UNMEASURED>) =>
    readingProblems(processDefaults.fdm, { ...UNMEASURED, ...readings }, 'disc.process.measured').map(
      ({ code }) => code,
    );

  it('are not found in a coupon that came out as usual', () => {
    expect(codes({ barMm: 50.2, slotMm: 1.8, landMm: 2.2 })).toEqual([]);
    expect(codes({})).toEqual([]);
  });

  it.each([
    ['disc/print-scaled', { barMm: 47 }],
    ['disc/edge-implausible', { slotMm: 4.2, landMm: 0.1 }],
    ['disc/marks-disagree', { slotMm: 2.6, landMm: 2.3 }],
    ['disc/contrast-impossible', { contrast: { open: 4, oneLayer: 90, twoLayers: 99 } }],
  ])('are told as %s', (code, readings) => {
    expect(codes(readings)).toContain(code);
  });
});
