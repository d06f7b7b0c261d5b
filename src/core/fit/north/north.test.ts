import { describe, expect, it } from 'vitest';
import { compassBearing, knownBearing, landmarkBearing, setNorth, sunBearing } from '../index.ts';

const london = { latitudeDeg: 51.4769, longitudeDeg: 0 };

describe('a landmark', () => {
  it('stands where simple geometry has it', () => {
    const to = (latitudeDeg: number, longitudeDeg: number) =>
      landmarkBearing({ latitudeDeg: 0, longitudeDeg: 0 }, { latitudeDeg, longitudeDeg }, 'tower').bearingDeg;
    expect(to(1, 0)).toBe(0);
    expect(to(0, 1)).toBeCloseTo(90, 9);
    expect(to(-1, 0)).toBeCloseTo(180, 9);
    expect(to(0, -1)).toBeCloseTo(270, 9);
    expect(to(0.01, 0.01)).toBeCloseTo(45, 3);
  });

  it('is refused when too near, or nowhere', () => {
    expect(() => landmarkBearing(london, { ...london, latitudeDeg: 51.4771 }, 'shed')).toThrow(
      'fit/landmark-too-near',
    );
    expect(() => landmarkBearing(london, { latitudeDeg: 95, longitudeDeg: 0 }, 'x')).toThrow(
      'fit/no-such-place',
    );
  });
});

describe('the sun', () => {
  it('is refused at night, at noon in the tropics, and without a zone', () => {
    expect(() => sunBearing(london, '2024-06-21T00:00:00Z')).toThrow('fit/sun-unfit');
    expect(() => sunBearing({ latitudeDeg: 23, longitudeDeg: 0 }, '2024-06-21T12:00:00Z')).toThrow(
      'fit/sun-unfit',
    );
    expect(() => sunBearing(london, '2024-06-21T12:00:00')).toThrow('fit/not-an-instant');
  });

  it('comes with the warning not to look at it', () => {
    expect(sunBearing(london, '2024-03-21T09:00:00Z').cautions.join(' ')).toMatch(/Never look at the sun/);
  });
});

describe('a compass', () => {
  it('reads true less declination, east counted plus', () => {
    // Declination in the west of Iceland is about 11 degrees west: true north of magnetic 100 is 89.
    const { bearingDeg, sigmaDeg } = compassBearing(
      100,
      { latitudeDeg: 64.1466, longitudeDeg: -21.9426 },
      '2026-07-04T00:00:00Z',
      'hill',
    );
    expect(bearingDeg).toBeCloseTo(100 - 11.1335, 3);
    expect(sigmaDeg).toBeGreaterThan(2);
  });

  it('is refused near a pole, and after the model ends', () => {
    expect(() =>
      compassBearing(0, { latitudeDeg: 86, longitudeDeg: 139 }, '2026-01-01T00:00:00Z', 'x'),
    ).toThrow('fit/compass-useless');
    expect(() => compassBearing(0, london, '2035-01-01T00:00:00Z', 'x')).toThrow('fit/no-magnetic-model');
  });
});

describe('setting north', () => {
  it('has no sign to get wrong: the answer is what the display must show', () => {
    const advice = setNorth(knownBearing(143.24, 0.5, 'the church tower'), null);
    expect(advice.instruction).toBe(
      'Hold the vane so that it points at the church tower, and turn the mast until the display shows 143.2°.',
    );
    expect(advice.entry).toBeNull();
    expect(advice.picture.html).toContain('143.2°');
    expect(advice.cautions.join(' ')).toMatch(/power lines/);
  });

  it('gives the offset that makes a wrong display right, across north too', () => {
    const bearing = knownBearing(5, 0.5, 'the mill');
    const { entry } = setNorth(bearing, { showsDeg: 350, offsetDeg: 348, at: '2024-05-17T10:30:00Z' });
    // It shows 15 degrees too little, so the offset grows by 15: 348 + 15 = 3.
    expect(entry).toMatchObject({ since: '2024-05-17T10:30:00Z', offsetDeg: 3 });
  });
});
