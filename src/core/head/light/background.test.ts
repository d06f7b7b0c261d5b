import { describe, expect, it } from 'vitest';
import { BOARD, LINEAR_HEAD, LOG_HEAD } from '../../../../test/support/handHead.ts';
import { signalOf } from '../circuit/signal.ts';
import { detectorBehind, leakShare } from './background.ts';

describe('light that reaches a sensor past the disc', () => {
  it('falls with the thickness as one measurement says', () => {
    const leak = { transmittedShare: 10 ** -0.8, measuredMm: 0.8 };
    // Optical density 1 a millimetre: 0.158 at 0.8 mm, and half and twice that.
    expect(leakShare(leak, 0.8)).toBeCloseTo(0.1585, 4);
    expect(leakShare(leak, 1.6)).toBeCloseTo(10 ** -1.6, 9);
    expect(leakShare(leak, 0.4)).toBeCloseTo(10 ** -0.4, 9);
  });

  it.each([
    ['photoresistor', LOG_HEAD.detector],
    ['phototransistor', LINEAR_HEAD.detector],
  ])('moves a %s as more light of the same kind would', (_, detector) => {
    const [leak, daylight] = [0.05, 0.3];
    const plain = signalOf(detector, 5_000, 'supply', BOARD);
    const behind = signalOf(detectorBehind(detector, { leak, daylight }), 5_000, 'supply', BOARD);
    // Light of the plain sensor: its own dark value counts as no light at all.
    expect(behind.counts(0, 1, 1)).toBeCloseTo(plain.counts(leak + dayOf(detector, daylight), 1, 1), 6);
    expect(behind.counts(1, 1, 1)).toBeCloseTo(plain.counts(1 + dayOf(detector, daylight), 1, 1), 6);
  });

  it('leaves a sensor alone in the dark behind something dense', () => {
    expect(detectorBehind(LOG_HEAD.detector, { leak: 0, daylight: 0 })).toBe(LOG_HEAD.detector);
  });
});

/** Daylight on the scale where a window is 1 and solid land 0; a photoresistor's land lies a little above no light. */
function dayOf(detector: typeof LOG_HEAD.detector, daylight: number): number {
  if (detector.kind !== 'photoresistor') return daylight;
  const floor = (detector.litOhm / detector.darkOhm) ** (1 / detector.gamma);
  return daylight / (1 - floor);
}
