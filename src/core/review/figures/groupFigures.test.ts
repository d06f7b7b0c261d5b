import { describe, expect, it } from 'vitest';
import { calmPeriod, steadyPeriod, TEN_MS } from '../../../../test/support/reviewPeriods.ts';
import { byClock } from './byClock.ts';
import { groupFigures } from './groupFigures.ts';

const SECOND_MS = 1000;
const WEEK_MS = 7 * 86_400_000;
/** A Thursday, on which weeks since 1970 begin. [ms UTC] */
const START_MS = Date.UTC(2026, 0, 1);

describe('figures of some periods', () => {
  it('keep scalar and vector means apart', () => {
    const { speed, headingDeg, agreement, ...rest } = groupFigures(
      [
        steadyPeriod(START_MS + TEN_MS, { headingDeg: 0, speedMPerS: 4 }),
        steadyPeriod(START_MS + 2 * TEN_MS, { headingDeg: 90, speedMPerS: 8 }),
      ],
      SECOND_MS,
    );
    // Unit vectors (1, 0) and (0, 1); wind vectors (4, 0) and (0, 8), halved.
    expect(headingDeg).toBeCloseTo(45, 9);
    expect(agreement).toBeCloseTo(Math.SQRT1_2, 12);
    expect(speed!.mean).toBe(6);
    expect(rest.vectorSpeedMPerS).toBeCloseTo(Math.sqrt(20), 12);
    expect(rest.vectorHeadingDeg).toBeCloseTo(63.43494882, 7); // atan 2
    expect(rest.steadiness).toBeCloseTo(Math.sqrt(20) / 6, 12);
    expect(rest.windRunKm).toBeCloseTo(7.2, 12); // 20 minutes at 6 m/s
    expect(rest.gust).toEqual({ speedMPerS: 12, atMs: START_MS + 2 * TEN_MS - 1000 });
    expect(rest.gustFactor!.mean).toBeCloseTo(1.5, 12);
    expect(rest.turbulenceIntensity!.mean).toBeCloseTo(0.1, 12);
  });

  it('have no heading where winds cancel out, and the spread of all directions', () => {
    const against = [0, 180].map((headingDeg, i) =>
      steadyPeriod(START_MS + (i + 1) * TEN_MS, { headingDeg }),
    );
    const { headingDeg, spreadDeg } = groupFigures(against, SECOND_MS);
    expect(headingDeg).toBeNull();
    expect(spreadDeg).toBeCloseTo((90 * 2) / Math.sqrt(3), 6); // asin 1 times 1 + 0.1547
  });

  it('never count a calm as north', () => {
    const { headingDeg, calmShare, gustFactor, turbulenceIntensity } = groupFigures(
      [calmPeriod(START_MS + TEN_MS), steadyPeriod(START_MS + 2 * TEN_MS, { headingDeg: 180 })],
      SECOND_MS,
    );
    expect(headingDeg).toBeCloseTo(180, 9);
    expect(calmShare!.mean).toBe(0.5);
    expect(gustFactor!.mean).toBeCloseTo(1.5, 12);
    expect(turbulenceIntensity!.mean).toBeCloseTo(0.1, 12);
  });

  it('weigh a short period by its readings', () => {
    const { speed } = groupFigures(
      [
        steadyPeriod(START_MS + TEN_MS, { speedMPerS: 2, readings: 300 }),
        steadyPeriod(START_MS + 2 * TEN_MS, { speedMPerS: 8, readings: 600 }),
      ],
      SECOND_MS,
    );
    expect(speed!.mean).toBe(6);
  });

  it('are as sure as their weeks agree: Student’s factor of 3 is 3.182 in the printed table', () => {
    const weeks = [4, 5, 6, 7].map((speedMPerS, week) =>
      steadyPeriod(START_MS + week * WEEK_MS + TEN_MS, { speedMPerS, headingDeg: 24 + speedMPerS }),
    );
    const { speed, headingWithinDeg } = groupFigures(weeks, SECOND_MS);
    // Of equal groups the jackknife is the standard error of their mean: s = 1.2910, over the root of 4.
    const half = (3.182 * Math.sqrt(5 / 3)) / 2;
    expect(speed!.interval!.high - 5.5).toBeCloseTo(half, 3);
    expect(5.5 - speed!.interval!.low).toBeCloseTo(half, 3);
    // Headings of 28, 29, 30 and 31 degrees spread alike; the arc is short enough to be straight.
    expect(headingWithinDeg).toBeCloseTo(half, 2);
  });

  it('say nothing of what less than two weeks cannot tell', () => {
    const { speed, headingWithinDeg } = groupFigures([steadyPeriod(START_MS + TEN_MS, {})], SECOND_MS);
    expect(speed!.interval).toBeNull();
    expect(headingWithinDeg).toBeNull();
  });

  it('of nothing are nothing', () => {
    expect(groupFigures([], SECOND_MS)).toMatchObject({
      periods: 0,
      speed: null,
      headingDeg: null,
      windRunKm: null,
    });
  });
});

describe('figures by the clock', () => {
  it('belong to the local hour and month of the middle of their ten minutes', () => {
    const midnight = Date.UTC(2026, 1, 1);
    const { hours } = byClock([steadyPeriod(midnight, {}), steadyPeriod(midnight + TEN_MS, {})], {
      utcOffsetMin: 0,
      intervalMs: SECOND_MS,
    });
    expect(hours.map(({ of, periods }) => [of, periods])).toEqual([
      [0, 1],
      [23, 1],
    ]);
    const { hours: local, months } = byClock([steadyPeriod(midnight, {})], {
      utcOffsetMin: 60,
      intervalMs: SECOND_MS,
    });
    expect(local.map(({ of }) => of)).toEqual([0]);
    expect(months.map(({ of }) => of)).toEqual([2]);
  });
});
