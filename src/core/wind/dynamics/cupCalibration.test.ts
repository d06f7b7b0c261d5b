import { describe, expect, it } from 'vitest';
import { cupCalibration, cupFactor, speedCapOfQuiet, speedOfRate } from './cupCalibration.ts';

// Rates of f = (n - 0.25) / 0.75 for n = 4 … 16, and speeds a few mm/s off; the line was worked out by numpy.
const rates = Array.from({ length: 13 }, (_, i) => (i + 4 - 0.25) / 0.75);
const speeds = [
  4.012, 4.992, 6.005, 6.99, 8.007, 9.003, 9.994, 11.009, 11.996, 12.989, 14.01, 14.998, 15.995,
];

describe('a calibration of cups', () => {
  const calibration = cupCalibration(rates, speeds);

  it('is the line by numpy: 0.25380357 m/s and 0.74970742 m a pulse', () => {
    expect(Math.abs(calibration.offsetMPerS - 0.25380357)).toBeLessThan(5e-9);
    expect(Math.abs(calibration.pathPerPulseM - 0.74970742)).toBeLessThan(5e-9);
    expect(Math.abs(calibration.line.correlation - 0.999997948)).toBeLessThan(5e-10);
    expect(Math.abs(calibration.scatterMPerS - 0.008237)).toBeLessThan(5e-7);
    expect(Math.abs(calibration.largestResidualMPerS - 0.01156)).toBeLessThan(5e-6);
  });

  it('gives no wind while the cups stand, not the offset', () => {
    expect(speedOfRate(calibration, 0)).toEqual({ speedMPerS: 0, errorMPerS: null });
    const { speedMPerS, errorMPerS } = speedOfRate(calibration, 10);
    expect(speedMPerS).toBeCloseTo(0.25380357 + 7.4970742, 7);
    expect(errorMPerS).toBeGreaterThan(calibration.scatterMPerS);
  });

  it('leaves standing points out and says so', () => {
    const withCalm = cupCalibration([0, 0, ...rates], [0, 0.4, ...speeds]);
    expect(withCalm.standing).toBe(2);
    expect(withCalm.offsetMPerS).toBe(calibration.offsetMPerS);
    expect(withCalm.range).toEqual({ lowMPerS: 4.012, highMPerS: 15.995 });
  });

  it('warns of speeds too close together, and says how far to go', () => {
    expect(calibration.cautions).toEqual([]);
    const narrow = cupCalibration(rates.slice(0, 3), speeds.slice(0, 3));
    expect(narrow.cautions.map(({ code, fix }) => [code, fix])).toEqual([
      ['wind/narrow-range', 'Add points up to 8.024 m/s or more.'],
    ]);
  });

  it('never makes a wind below nothing of a slow rate', () => {
    const below = cupCalibration([1, 2, 3], [0, 1, 2]);
    expect(speedOfRate(below, 0.5).speedMPerS).toBe(0);
  });

  it('is refused where it cannot be', () => {
    expect(() => cupCalibration([1, 2, 3], [5, 4, 3])).toThrow('wind/slope-not-rising');
    expect(() => cupCalibration([0, 1, 2], [0, 4, 5])).toThrow('wind/too-few-readings');
    expect(() => cupCalibration([1, 2], [3])).toThrow('wind/unequal-lengths');
    expect(() => cupCalibration([1, NaN, 3], [3, 4, 5])).toThrow('wind/bad-reading');
    expect(() => cupCalibration([1, 2, 3], [3, -4, 5])).toThrow('wind/bad-reading');
    expect(() => cupCalibration([5, 5, 5], [3, 4, 5])).toThrow('wind/no-variation');
    expect(() => speedOfRate(calibration, -1)).toThrow('wind/bad-reading');
  });
});

describe('what pulses say', () => {
  it('is a factor of 2.5 for cups whose centres go 1 m while the wind goes 2.5', () => {
    const radiusMm = 1000 / (2 * Math.PI);
    expect(cupFactor({ pathPerPulseM: 1.25, pulsesPerTurn: 2, radiusMm })).toBeCloseTo(2.5, 12);
    expect(() => cupFactor({ pathPerPulseM: 1, pulsesPerTurn: 0, radiusMm })).toThrow('wind/bad-reading');
  });

  // One pulse a second at 2.4 km/h: common practice, arithmetic by hand.
  it.each([
    [10, 240],
    [50, 48],
    [155, 15.48],
  ])('no more than one in %f ms, which caps the wind at %f km/h', (quietMs, cap) => {
    const cups = { offsetMPerS: 0, pathPerPulseM: 2.4 / 3.6 };
    expect(speedCapOfQuiet(cups, quietMs) * 3.6).toBeCloseTo(cap, 2);
    expect(() => speedCapOfQuiet(cups, 0)).toThrow('wind/bad-reading');
  });
});
