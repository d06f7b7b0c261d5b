import { describe, expect, it } from 'vitest';
import {
  aviationWind,
  roundedHeading,
  smallestArc,
  speedFrom,
  windGroup,
} from '../../../src/core/wind/index.ts';

const tenMinutes = {
  meanSpeedMPerS: 5,
  meanHeadingDeg: 130,
  directions: smallestArc([130]),
  gustMPerS: null,
};
const spread = (range: number) => ({ fromDeg: 280, toDeg: (280 + range) % 360, rangeDeg: range });
const knots = (speed: number) => speedFrom(speed, 'kt');

describe('rounding to 10° (Attachment C)', () => {
  it.each([
    [124, 120],
    [125, 130],
    [355, 360],
    [354, 350],
    [4, 360],
    [5, 10],
    [0, 360],
    [-6, 350],
  ])('%i° becomes %i°', (heading, rounded) => {
    expect(roundedHeading(heading)).toBe(rounded);
  });

  it('does not round what is no angle', () => {
    expect(() => roundedHeading(NaN)).toThrow('wind/bad-reading');
  });
});

describe('variable wind (4.1.5.2)', () => {
  it.each([
    [70, 1.4, 'variable'],
    [70, 1.5, 'variable-between'],
    [180, 1.5, 'variable'],
    [180, 9, 'variable'],
    [179.9, 9, 'variable-between'],
    [60, 9, 'variable-between'],
    [59.9, 1, 'steady'],
    [70, 0.49, 'calm'],
    [0, 0.5, 'steady'],
  ])('a spread of %f° at %f m/s is %s', (range, speed, kind) => {
    const wind = { ...tenMinutes, meanSpeedMPerS: speed, directions: spread(range) };
    expect(aviationWind(wind).kind).toBe(kind);
  });

  it('has no direction where the readings cancel out, or none could be read', () => {
    expect(aviationWind({ ...tenMinutes, meanHeadingDeg: null }).kind).toBe('variable');
    expect(aviationWind({ ...tenMinutes, directions: null }).headingDeg).toBeNull();
  });

  it('gives a gust from 5 m/s above the mean', () => {
    expect(aviationWind({ ...tenMinutes, gustMPerS: 10 }).gustMPerS).toBe(10);
    expect(aviationWind({ ...tenMinutes, gustMPerS: 9.99 }).gustMPerS).toBeNull();
  });

  it('refuses what is no wind', () => {
    expect(() => aviationWind({ ...tenMinutes, meanSpeedMPerS: NaN })).toThrow('wind/bad-reading');
    expect(() => aviationWind({ ...tenMinutes, gustMPerS: -1 })).toThrow('wind/bad-reading');
  });
});

describe('the wind group', () => {
  const group = (change: Partial<Parameters<typeof aviationWind>[0]>, unit: 'KT' | 'MPS' = 'KT') =>
    windGroup(aviationWind({ ...tenMinutes, ...change }), unit);

  it('13008KT', () => {
    expect(group({ meanSpeedMPerS: knots(8) })).toBe('13008KT');
  });

  it('00000KT for a calm, which has no north', () => {
    expect(group({ meanSpeedMPerS: 0.3, meanHeadingDeg: 0 })).toBe('00000KT');
  });

  it('VRB04KT', () => {
    expect(group({ meanSpeedMPerS: knots(4), directions: spread(190) })).toBe('VRB04KT');
  });

  it('27025G40KT', () => {
    const wind = { meanSpeedMPerS: knots(25), meanHeadingDeg: 270, gustMPerS: knots(40) };
    expect(group(wind)).toBe('27025G40KT');
  });

  it('32012G22KT 280V350', () => {
    const wind = {
      meanSpeedMPerS: knots(12),
      meanHeadingDeg: 318,
      gustMPerS: knots(22),
      directions: spread(70),
    };
    expect(group(wind)).toBe('32012G22KT 280V350');
  });

  it('36005MPS for a wind from north', () => {
    expect(group({ meanHeadingDeg: 2 }, 'MPS')).toBe('36005MPS');
  });

  it('says only "more than" from 100 kt or 50 m/s on', () => {
    expect(group({ meanSpeedMPerS: knots(100) })).toBe('130P99KT');
    expect(group({ meanSpeedMPerS: 50 }, 'MPS')).toBe('130P49MPS');
  });
});
