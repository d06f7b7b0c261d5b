import { describe, expect, it } from 'vitest';
import {
  edgeSpread,
  nearestE24,
  signalOf,
  speedLimitDegPerS,
  type CircuitSpec,
  type Detector,
  type HeadPlan,
} from '../../../src/core/head/index.ts';
import { handDisc } from '../../support/handDisc.ts';
import { BOARD, handHead, LOG_HEAD } from '../../support/handHead.ts';

/** Within half of the last printed digit. */
function printed(value: number, expected: number, digits: number): void {
  expect(Math.abs(value - expected)).toBeLessThanOrEqual(0.5 * 10 ** -digits + 1e-12);
}

function cell(litOhm: number, darkOhm: number, gamma = 0.7): Detector {
  return { kind: 'photoresistor', litOhm, darkOhm, gamma, riseMs: 20, fallMs: 30, spread: 0 };
}

function headOf(detector: Detector, circuit: Partial<CircuitSpec> = {}): HeadPlan {
  return handHead(handDisc({ positions: 8 }), { spec: { ...LOG_HEAD, detector }, circuit });
}

describe('a photoresistor', () => {
  it('of 10 kohm at 10 lx and slope 0.6 has 2511.886 ohm at 100 lx', () => {
    // Lit at 1000 lx and dark at 10 lx; 100 lx is the share 90/990 of the way in light.
    const signal = signalOf(cell(630.957, 10_000, 0.6), 1_000, 'supply', BOARD);
    const counts = signal.counts(90 / 990, 1, 1);
    printed(1_000 * (1024 / counts - 1), 2_511.886, 2);
  });
});

describe('the best resistor', () => {
  it.each([
    [2_000, 200_000, 20_000, 930.9, 93.1, 837.8],
    [5_000, 50_000, 15_811.4, 778.0, 246.0, 532.0],
    [1_000, 1_000_000, 31_622.8, 992.6, 31.4, 961.2],
    [10_000, 20_000, 14_142.1, 599.8, 424.2, 175.7],
  ])(
    'for %i lit and %i dark is %f ohm: %f lit, %f dark, swing %f of 1024',
    (lit, dark, best, high, low, swing) => {
      const detector = cell(lit, dark);
      const signal = signalOf(detector, Math.sqrt(lit * dark), 'supply', BOARD);
      printed(Math.sqrt(lit * dark), best, 1);
      printed(signal.counts(1, 1, 1), high, 1);
      printed(signal.counts(0, 1, 1), low, 1);
      printed(signal.counts(1, 1, 1) - signal.counts(0, 1, 1), swing, 1);
    },
  );

  it('of the worked example can be bought, and is what the head takes', () => {
    const { levels } = headOf(cell(2_000, 200_000));
    expect(levels.bestResistorOhm).toBe(20_000);
    expect(levels.resistorOhm).toBe(20_000);
    printed(levels.litCounts, 930.91, 2);
    printed(levels.darkCounts, 93.09, 2);
    printed(levels.sourceOhm, 18_181.8, 1);
  });

  it.each([
    [15_811, 16_000],
    [31_623, 33_000],
    [14_142, 15_000],
    [9_800, 10_000],
    [1_000, 1_000],
    [995, 1_000],
  ])('of %i ohm is bought as %i ohm', (ohm, bought) => {
    expect(nearestE24(ohm)).toBe(bought);
  });

  it.each([
    [10_000, 451.0],
    [40_000, 573.0],
  ])('replaced by %i ohm puts the middle at %f counts', (resistorOhm, middle) => {
    const { levels } = headOf(cell(2_000, 200_000), { resistorOhm });
    printed((levels.lowCounts + levels.highCounts) / 2, middle, 1);
  });

  it.each([
    [2.25, 0.2],
    [4, 1 / 3],
    [9, 0.5],
  ])('gives a contrast of %f a swing of %f', (contrast, swing) => {
    const signal = signalOf(cell(1_000, 1_000 * contrast), 1_000 * Math.sqrt(contrast), 'supply', BOARD);
    expect((signal.counts(1, 1, 1) - signal.counts(0, 1, 1)) / 1024).toBeCloseTo(swing, 12);
  });
});

describe('the threshold of a photoresistor', () => {
  it.each([
    [100, 0.7, 0.9],
    [10, 0.6, 0.568],
    [4, 0.6, 0.354],
  ])(
    'for a contrast of %f and slope %f widens a window by %f beam radii at each edge',
    (contrast, gamma, radii) => {
      const lit = 2_000;
      const detector = cell(lit, lit * contrast, gamma);
      const { levels } = headOf(detector, { resistorOhm: lit * Math.sqrt(contrast) });
      const x = edgeSpread({ shape: 'gaussian', radiusMm: 1 }).edgeAt(levels.risingLight);
      printed(x, radii, 3);
    },
  );

  it('is passed 71.94 ms after light has gone and 1.906 ms after it has come', () => {
    const { levels } = headOf(cell(2_000, 200_000));
    printed(levels.fallLagMs, 71.94, 2);
    printed(levels.riseLagMs, 20 * Math.log(1.1), 3);
  });
});

describe('the speed limit', () => {
  it.each([
    [32, 30, 375],
    [64, 30, 187.5],
    [16, 30, 750],
  ])('of %i positions behind %f ms is %f deg/s', (positions, lagMs, limit) => {
    expect(speedLimitDegPerS({ stepDeg: 360 / positions, edgeDeg: 0, lagMs, loopMs: 0 })).toBeCloseTo(
      limit,
      9,
    );
  });

  it('of 32 positions behind the fall lag of the worked example is 156 deg/s', () => {
    printed(speedLimitDegPerS({ stepDeg: 11.25, edgeDeg: 0, lagMs: 71.94, loopMs: 0 }), 156, 0);
  });
});
