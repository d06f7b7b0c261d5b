import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  AIR_KG_PER_M3,
  finAreaForM2,
  liftSlope,
  vaneResponse,
  windMomentNm,
  type VaneBody,
} from './vaneMotion.ts';

const vane: VaneBody = { finAreaM2: 0.01, aspectRatio: 2, armM: 0.3, inertiaKgM2: 0.002 };

/** Angle of a vane let go at 10 degrees, in small steps of time: nothing of the closed form is used. [deg] */
function letGo(
  { finAreaM2, aspectRatio, armM, inertiaKgM2 }: VaneBody,
  speed: number,
  seconds: number,
): number[] {
  const slope = (2 * Math.PI * aspectRatio) / (2 + Math.hypot(2, aspectRatio));
  const step = 1e-5;
  const angles: number[] = [];
  let [angle, rate] = [10, 0];
  for (let t = 0; t < seconds; t += step) {
    const felt = angle + (rate * armM) / speed; // the fin moves sideways, and so meets the wind at another angle
    const moment = 0.5 * AIR_KG_PER_M3 * speed ** 2 * finAreaM2 * slope * felt * armM;
    rate -= (moment / inertiaKgM2) * step;
    angle += rate * step;
    angles.push(angle);
  }
  return angles;
}

describe('a vane let go off the wind', () => {
  it.each([2, 8])('overshoots by as much as the closed form says, at %i m/s', (speed) => {
    const { overshoot, naturalWavelengthM } = vaneResponse(vane);
    const angles = letGo(vane, speed, (1.5 * naturalWavelengthM) / speed);
    expect(-angles.reduce((a, b) => Math.min(a, b)) / 10).toBeCloseTo(overshoot, 3);
  });

  it('makes good half of it in the delay distance, at any speed', () => {
    const { delayDistanceM } = vaneResponse(vane);
    for (const speed of [3, 10]) {
      const angles = letGo(vane, speed, (2 * delayDistanceM!) / speed);
      const half = angles.findIndex((angle) => angle <= 5) * 1e-5 * speed;
      expect(half / delayDistanceM!).toBeCloseTo(1, 3);
    }
  });

  it('has the damping ratio of the table for its overshoot', () => {
    // Second-order response: damping ratio 0.3 overshoots by 0.372326, 0.4 by 0.253827, 0.5 by 0.163034.
    for (const [damping, overshoot] of [
      [0.3, 0.372326],
      [0.4, 0.253827],
      [0.5, 0.163034],
    ] as const) {
      const inertiaKgM2 = vane.inertiaKgM2 * (vaneResponse(vane).damping / damping) ** 2;
      expect(vaneResponse({ ...vane, inertiaKgM2 }).damping).toBeCloseTo(damping, 10);
      expect(vaneResponse({ ...vane, inertiaKgM2 }).overshoot).toBeCloseTo(overshoot, 6);
    }
  });

  it('is within 2 % of the rule of thumb: wavelength is 6.0 less 2.4 times the damping, in delay distances', () => {
    const { damping, naturalWavelengthM, delayDistanceM } = vaneResponse(vane);
    expect(naturalWavelengthM / delayDistanceM! / (6 - 2.4 * damping)).toBeCloseTo(1, 1.5);
  });

  it('is damped more by a longer arm and less by a heavier one', () => {
    fc.assert(
      fc.property(fc.double({ min: 1.01, max: 3, noNaN: true }), (factor) => {
        const { damping } = vaneResponse(vane);
        expect(vaneResponse({ ...vane, armM: vane.armM * factor }).damping).toBeGreaterThan(damping);
        expect(vaneResponse({ ...vane, inertiaKgM2: vane.inertiaKgM2 * factor }).damping).toBeLessThan(
          damping,
        );
      }),
      { seed: 20261125 },
    );
  });

  it('does not swing at all when it is damped more than enough', () => {
    expect(vaneResponse({ ...vane, inertiaKgM2: 1e-6 })).toMatchObject({
      overshoot: 0,
      delayDistanceM: null,
    });
  });
});

describe('the hold of a fin', () => {
  it('is that of an endless wing at one end, and of a slender one at the other', () => {
    expect(liftSlope(1e9)).toBeCloseTo(2 * Math.PI, 6);
    expect(liftSlope(1e-6) / 1e-6).toBeCloseTo(Math.PI / 2, 5);
  });

  it('turns with the moment of the worked example', () => {
    // 0.5 m/s, 0.01 m², 5 degrees, 0.2 m, air of 1.2 kg/m³ and 3 a radian: 0.0785 N mm.
    const moment = windMomentNm({ finAreaM2: 0.01, aspectRatio: 2, armM: 0.2 }, 0.5, (5 * Math.PI) / 180);
    expect((1000 * moment * 1.2 * 3) / (AIR_KG_PER_M3 * liftSlope(2))).toBeCloseTo(0.0785, 4);
  });

  it('starts against just the friction it was sized for', () => {
    const want = { frictionNm: 2e-4, speedMPerS: 0.5, offRad: 0.087, armM: 0.25, aspectRatio: 1.5 };
    const finAreaM2 = finAreaForM2(want);
    expect(windMomentNm({ ...want, finAreaM2 }, 0.5, 0.087)).toBeCloseTo(2e-4, 12);
  });
});
