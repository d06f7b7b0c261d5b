import { describe, expect, it } from 'vitest';
import { screenHours, screenPeriod } from '../../../src/core/wind/index.ts';

const HOUR = 3_600_000;

/** Hours with a lively wind, changed where `mend` says so. */
function hours(
  count: number,
  mend: (i: number) => { headingDeg?: number | null; speedMPerS?: number | null },
) {
  return Array.from({ length: count }, (_, i) => ({
    endMs: (i + 1) * HOUR,
    headingDeg: (200 + 37 * i) % 360,
    speedMPerS: 4 + (i % 3),
    ...mend(i),
  }));
}

describe('screening of hours (Table 8-4)', () => {
  it('finds nothing in a lively day', () => {
    expect(screenHours(hours(24, () => ({})))).toEqual([]);
  });

  it.each([
    [25.1, 1],
    [-0.1, 1],
    [25, 0],
  ])('a speed of %f m/s gives %i flags', (speed, count) => {
    const found = screenHours(hours(24, (i) => (i === 7 ? { speedMPerS: speed } : {})));
    expect(found.map(({ flag, fromMs }) => [flag, fromMs / HOUR])).toEqual(
      Array.from({ length: count }, () => ['speed-range', 8]),
    );
  });

  it('flags a direction above 360, such as the 999 of a filler', () => {
    const found = screenHours(hours(24, (i) => (i === 3 ? { headingDeg: 999 } : {})));
    expect(found.map(({ flag }) => flag)).toEqual(['heading-range']);
  });

  it('flags a speed that varies by 0.1 m/s or less for 3 hours, not for 2', () => {
    const still = (count: number) =>
      screenHours(hours(24, (i) => (i >= 5 && i < 5 + count ? { speedMPerS: 7 + 0.05 * (i % 3) } : {})));
    expect(still(2)).toEqual([]);
    expect(still(3).map(({ flag, fromMs, toMs }) => [flag, fromMs / HOUR, toMs / HOUR])).toEqual([
      ['speed-stuck', 6, 8],
    ]);
  });

  it('flags a speed that varies by 0.5 m/s or less for 12 hours', () => {
    const slow = screenHours(hours(30, (i) => (i < 14 ? { speedMPerS: 7 + (i % 2) * 0.45 } : {})));
    expect(slow.map(({ flag, fromMs, toMs }) => [flag, fromMs / HOUR, toMs / HOUR])).toEqual([
      ['speed-stuck', 1, 14],
    ]);
  });

  it('flags a direction that varies by 1° or less for more than 3 hours, across north too', () => {
    const still = (count: number) =>
      screenHours(hours(24, (i) => (i < count ? { headingDeg: (359.5 + (i % 2)) % 360 } : {})));
    expect(still(3)).toEqual([]);
    expect(still(4).map(({ flag, fromMs, toMs }) => [flag, fromMs / HOUR, toMs / HOUR])).toEqual([
      ['heading-stuck', 1, 4],
    ]);
  });

  it('flags a direction that varies by 10° or less for 18 hours', () => {
    const found = screenHours(hours(24, (i) => (i < 18 ? { headingDeg: (356 + 4 * (i % 3)) % 360 } : {})));
    expect(found.map(({ flag, toMs }) => [flag, toMs / HOUR])).toEqual([['heading-stuck', 18]]);
  });

  it('does not carry a run across a missing hour', () => {
    const gap = hours(24, (i) => (i < 4 ? { headingDeg: i === 2 ? null : 90 } : {}));
    expect(screenHours(gap)).toEqual([]);
    const removed = hours(24, (i) => (i < 5 ? { headingDeg: 90 } : {})).filter((_, i) => i !== 2);
    expect(screenHours(removed)).toEqual([]);
  });

  it('wants the hours in order', () => {
    expect(() => screenHours(hours(3, () => ({})).reverse())).toThrow('wind/time-not-rising');
  });
});

describe('screening of a single period (NREL handbook)', () => {
  const good = {
    endMs: 0,
    headingDeg: 200,
    speedMPerS: 6,
    speedDeviationMPerS: 0.8,
    gustMPerS: 9,
    spreadDeg: 12,
  };

  it('needs to know the offset of the cups', () => {
    expect(() => screenPeriod(good, NaN)).toThrow('wind/bad-reading');
  });

  it('passes a plain one, and one with parts missing', () => {
    expect(screenPeriod(good, 0.2)).toEqual([]);
    expect(screenPeriod({ ...good, gustMPerS: null, spreadDeg: null }, 0.2)).toEqual([]);
  });

  it.each([
    ['speedMPerS', 25, 'speed-range'],
    ['speedMPerS', 0.2, 'speed-range'],
    ['speedDeviationMPerS', 3, 'speed-range'],
    ['speedDeviationMPerS', 0, 'speed-range'],
    ['gustMPerS', 30, 'speed-range'],
    ['spreadDeg', 3, 'heading-range'],
    ['spreadDeg', 75, 'heading-range'],
    ['spreadDeg', NaN, 'heading-range'],
  ])('flags %s of %f', (part, value, flag) => {
    expect(screenPeriod({ ...good, [part]: value }, 0.2).map((span) => span.flag)).toEqual([flag]);
  });
});
