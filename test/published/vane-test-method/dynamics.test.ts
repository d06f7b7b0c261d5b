import { describe, expect, it } from 'vitest';
import {
  cupRecovery,
  dampingFromOvershoot,
  distanceConstant,
  naturalWavelength,
  overshootFromDamping,
  releasedVane,
  vaneMotion,
  vaneRanges,
  wavelengthOverDelay,
} from '../../../src/core/wind/index.ts';

describe('damping from overshoot', () => {
  it.each([
    [0.5, 0.215454],
    [0.25, 0.403713],
    [0.1, 0.591155],
    [0.05, 0.690107],
  ])('of %f is %f', (overshoot, damping) => {
    expect(Math.abs(dampingFromOvershoot(overshoot) - damping)).toBeLessThan(1e-6);
  });

  it('makes 25 % of overshoot and a ratio of 0.4 one and the same condition', () => {
    expect(overshootFromDamping(vaneRanges.damping.low)).toBeCloseTo(vaneRanges.overshootAtMost, 2);
  });

  it('is not defined without overshoot, or with swings that grow', () => {
    for (const overshoot of [0, 1, 1.2, NaN]) {
      expect(() => dampingFromOvershoot(overshoot)).toThrow('wind/bad-reading');
    }
  });
});

describe('a vane of second order', () => {
  it.each([
    [0.3, 0.372326, 5.31497, 5.5716],
    [0.4, 0.253827, 5.08516, 5.54836],
    [0.5, 0.163034, 4.85548, 5.60663],
    [0.6, 0.09478, 4.6267, 5.78338],
    [0.7, 0.045988, 4.39981, 6.16096],
  ])(
    'of damping %f has overshoot %f and wavelengths of %f and %f delay distances',
    (zeta, omega, natural, damped) => {
      expect(Math.abs(overshootFromDamping(zeta) - omega)).toBeLessThan(1e-6);
      expect(Math.abs(wavelengthOverDelay(zeta) - natural)).toBeLessThan(1e-5);
      expect(Math.abs(wavelengthOverDelay(zeta) / Math.sqrt(1 - zeta ** 2) - damped)).toBeLessThan(1e-5);
      const ruleOfThumb = 6 - 2.4 * zeta;
      expect(Math.abs(ruleOfThumb / natural - 1)).toBeLessThan(0.0185); // up to 1.8 % low
    },
  );

  // λn 5 m, ζ 0.5, wind 5 m/s, release at 10°.
  it('makes good half its release in 1.0298 m of wind, and swings to -1.6303°', () => {
    const at = (seconds: number): number => 10 * releasedVane((5 * seconds) / 5, 0.5);
    expect(at(0)).toBe(10);
    // Half the last digit printed is 1e-5 s here, in which the vane turns by 5e-4°.
    expect(Math.abs(at(1.0298 / 5) - 5)).toBeLessThan(5e-4);
    const dampedM = 5.773503;
    expect(Math.abs(naturalWavelength(dampedM, 0.5) - 5)).toBeLessThan(1e-6);
    expect(Math.abs(at(dampedM / 5 / 2) + 1.6303)).toBeLessThan(5e-5);
  });

  it('is told from its turning points', () => {
    const halfPeriodS = 5.773503 / 5 / 2;
    const motion = vaneMotion({
      speedMPerS: 5,
      turningPointsDeg: [10, -1.6303, 0.26579],
      timesS: [0, halfPeriodS, 2 * halfPeriodS],
    });
    expect(motion.damping).toBeCloseTo(0.5, 4);
    expect(motion.overshoot).toBeCloseTo(0.163034, 4);
    expect(motion.dampedWavelengthM).toBeCloseTo(5.773503, 5);
    expect(motion.naturalWavelengthM).toBeCloseTo(5, 3);
    expect(motion.delayDistanceM).toBeCloseTo(1.0298, 3);
    expect(motion.cautions).toEqual([]);
    expect(Object.values(motion.reaches)).toEqual([true, true, true, true, true]);
  });
});

describe('cups of first order', () => {
  it('have made good 63.2 % of a step after one distance constant', () => {
    expect(distanceConstant(8, 0.35)).toBeCloseTo(2.8, 12);
    expect(Math.abs(cupRecovery(2.8, 2.8) - 0.632)).toBeLessThanOrEqual(5e-4);
    expect(cupRecovery(0, 2.8)).toBe(0);
  });

  it('need a distance constant', () => {
    expect(() => cupRecovery(1, 0)).toThrow('wind/bad-reading');
    expect(() => distanceConstant(0, 1)).toThrow('wind/bad-reading');
  });
});
