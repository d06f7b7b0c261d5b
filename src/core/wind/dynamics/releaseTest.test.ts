import { describe, expect, it } from 'vitest';
import { vaneMotion } from './releaseTest.ts';

const release = { speedMPerS: 5, turningPointsDeg: [10, -2, 0.4], timesS: [0, 0.6, 1.2] };

describe('a vane let go', () => {
  it('shows a period of twice the time between turning points', () => {
    const motion = vaneMotion(release);
    expect(motion.overshoot).toBeCloseTo(0.2, 12);
    expect(motion.dampedWavelengthM).toBeCloseTo(6, 12);
    expect(motion.reaches.damping).toBe(true);
  });

  it('may start on either side, and rests on all swings', () => {
    const other = { ...release, turningPointsDeg: [-10, 2, -0.4] };
    expect(vaneMotion(other)).toEqual(vaneMotion(release));
    expect(vaneMotion({ ...release, turningPointsDeg: [10, -3, 0.4] }).overshoot).toBeCloseTo(0.2, 12);
  });

  it('falls short where it swings on and on', () => {
    const lively = { speedMPerS: 5, turningPointsDeg: [10, -6, 3.6], timesS: [0, 1.2, 2.4] };
    const { reaches, damping } = vaneMotion(lively);
    expect(damping).toBeLessThan(0.3);
    expect(reaches).toEqual({
      overshoot: false,
      damping: false,
      dampingElsewhere: false,
      dampedWavelength: false,
      delayDistance: true,
    });
  });

  it('was not released further off than the test is good for', () => {
    const wide = vaneMotion({ ...release, turningPointsDeg: [30, -6, 1.2] });
    expect(wide.cautions.map(({ code }) => code)).toEqual(['wind/release-too-wide']);
  });

  it('must swing past the wind, less each time', () => {
    for (const turningPointsDeg of [
      [10, 2, -0.4],
      [10, -10, 5],
      [10, 0, 0],
    ]) {
      expect(() => vaneMotion({ ...release, turningPointsDeg })).toThrow('wind/no-overshoot');
    }
    expect(() => vaneMotion({ speedMPerS: 5, turningPointsDeg: [10], timesS: [0] })).toThrow(
      'wind/too-few-readings',
    );
  });

  it('needs a time for each turning point, in order, and wind', () => {
    expect(() => vaneMotion({ ...release, timesS: [0, 0.6] })).toThrow('wind/unequal-lengths');
    expect(() => vaneMotion({ ...release, timesS: [0, 0.6, 0.6] })).toThrow('wind/bad-reading');
    expect(() => vaneMotion({ ...release, timesS: [0, NaN, 1] })).toThrow('wind/bad-reading');
    expect(() => vaneMotion({ ...release, speedMPerS: 0 })).toThrow('wind/bad-reading');
  });
});
