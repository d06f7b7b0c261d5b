import { describe, expect, it } from 'vitest';
import { draws, normal } from '../../../../test/support/handTurn.ts';
import { releaseTest, spinDown, type TimedHeading } from '../index.ts';

/** A vane held off and let go: the damped swing in closed form. */
function swing(zeta: number, periodS: number, held: number, noise: number): TimedHeading[] {
  const random = draws(7);
  const omega = (2 * Math.PI) / periodS / Math.sqrt(1 - zeta * zeta);
  const damped = omega * Math.sqrt(1 - zeta * zeta);
  return Array.from({ length: 500 }, (_, i) => {
    const timeS = i * 0.02;
    const t = timeS - 1;
    const off =
      t < 0
        ? held
        : held *
          Math.exp(-zeta * omega * t) *
          (Math.cos(damped * t) + ((zeta * omega) / damped) * Math.sin(damped * t));
    return { timeS, headingDeg: (((355 + off + noise * normal(random)) % 360) + 360) % 360 };
  });
}

describe('a release test', () => {
  it.each([
    [0.2, 1],
    [0.35, 1.4],
    [0.5, 2],
  ])('finds damping %s of a swing of %s s, across north', (zeta, periodS) => {
    const { motion, restDeg, turningPointsDeg } = releaseTest(swing(zeta, periodS, 12, 0.02), 5, 0.1);
    expect(Math.abs(motion.damping - zeta)).toBeLessThan(0.03);
    expect(Math.abs(motion.dampedWavelengthM - 5 * periodS)).toBeLessThan(0.06 * 5 * periodS);
    expect(Math.abs(restDeg - 355)).toBeLessThan(0.1);
    expect(turningPointsDeg.length).toBeGreaterThanOrEqual(2);
  });

  it('is refused where readings are too coarse, or nothing was released', () => {
    expect(() => releaseTest(swing(0.3, 1, 12, 0), 5, 11.25)).toThrow('fit/release-too-coarse');
    expect(() => releaseTest(swing(0.3, 1, 12, 0).slice(0, 5), 5, 0.1)).toThrow('fit/release-not-seen');
  });
});

/** Pulses of cups that slow down by −dω/dt = c + k ω, each at the moment that closed form has it. */
function pulsesOf(c: number, k: number, from: number): number[] {
  const times: number[] = [];
  let [phase, hz, t] = [0, from, 0];
  while (hz > 0.02) {
    const dt = 1e-4;
    hz -= (c + k * hz) * dt;
    phase += hz * dt;
    t += dt;
    if (phase >= times.length + 1) times.push(t);
  }
  return times;
}

describe('spin-down', () => {
  it.each([
    [0.05, 0.1],
    [0.2, 0.02],
  ])('parts bearing %s from air %s', (c, k) => {
    const { bearingHzPerS, airPerS, spinDownS } = spinDown(pulsesOf(c, k, 4));
    expect(Math.abs(bearingHzPerS / c - 1)).toBeLessThan(0.1);
    expect(Math.abs(airPerS - k)).toBeLessThan(0.02);
    expect(Math.abs(spinDownS / (Math.log1p((k * 2) / c) / k) - 1)).toBeLessThan(0.1);
  });

  it('is refused for cups that do not slow, or too few pulses', () => {
    expect(() => spinDown([0, 1, 2])).toThrow('fit/spin-down-too-short');
    const speeding = Array.from({ length: 30 }, (_, i) => Math.sqrt(i));
    expect(() => spinDown(speeding)).toThrow('fit/spin-down-not-slowing');
  });
});
