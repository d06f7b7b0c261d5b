import { describe, expect, it } from 'vitest';
import { steadyPeriod, TEN_MS } from '../../../../test/support/reviewPeriods.ts';
import { roseOf, RoseSum } from '../../wind/index.ts';
import type { ReviewPeriod } from '../sum/reviewPeriod.ts';
import { comparisonOf } from './comparison.ts';

const WEEK_MS = 7 * 86_400_000;

/** What one record of steady periods is compared by: [deg], [m/s] by instant of its end. */
function record(winds: readonly (readonly [number, number, number])[]) {
  const sum = new RoseSum({
    sectors: { count: 8, firstCentreDeg: 0 },
    speedBoundsMPerS: [4, 8],
    calmBelowMPerS: 0.5,
    equalWeight: 'reading',
    utcOffsetMin: 0,
  });
  const periods: ReviewPeriod[] = winds.map(([endMs, headingDeg, speedMPerS]) => {
    sum.add(endMs - 1, headingDeg, speedMPerS);
    return steadyPeriod(endMs, { headingDeg, speedMPerS });
  });
  return { rose: roseOf(sum), periods };
}

describe('two records side by side', () => {
  it('tell a wrong north and a shadowed cup in every sector that has wind', () => {
    const winds = Array.from(
      { length: 80 },
      (_, i) => [(i + 1) * TEN_MS, (i * 45) % 360, 4 + (i % 5)] as const,
    );
    const turned = winds.map(([at, deg, speed]) => [at, (deg + 12) % 360, 0.9 * speed] as const);
    const { sectors, together } = comparisonOf(record(winds), record(turned), 'pier');
    expect(together).toBe(80);
    for (const { turnDeg, speedRatio } of sectors) {
      expect(turnDeg!.mean).toBeCloseTo(12, 9);
      expect(speedRatio!.mean).toBeCloseTo(0.9, 12);
    }
  });

  it('turn by the short way round north', () => {
    const one = record([[TEN_MS, 355, 5]]);
    const other = record([[TEN_MS, 5, 5]]);
    expect(comparisonOf(one, other, 'pier').sectors[0]!.turnDeg!.mean).toBeCloseTo(10, 9);
    expect(comparisonOf(other, one, 'pier').sectors[0]!.turnDeg!.mean).toBeCloseTo(-10, 9);
  });

  it('of different times have shares and speeds, and neither turn nor ratio', () => {
    const one = record([
      [TEN_MS, 0, 4],
      [2 * TEN_MS, 90, 6],
    ]);
    const other = record([
      [9 * TEN_MS, 90, 8],
      [10 * TEN_MS, 92, 10],
    ]);
    const { sectors, together } = comparisonOf(one, other, '2025');
    expect(together).toBe(0);
    const [north, , east] = sectors;
    expect(north).toMatchObject({ share: 0.5, otherShare: 0, difference: -0.5, otherSpeed: null });
    expect(east).toMatchObject({
      share: 0.5,
      otherShare: 1,
      difference: 0.5,
      turnDeg: null,
      speedRatio: null,
    });
    expect([east!.speed!.mean, east!.otherSpeed!.mean]).toEqual([6, 9]);
    expect(east!.isApart).toBeNull(); // minutes have no interval
  });

  it('lie apart where their weeks never overlap, and not where they are the same', () => {
    const weeks = (headingDeg: number, first: number) =>
      record(
        Array.from({ length: 400 }, (_, i) => [
          (first + (i % 20)) * WEEK_MS + (i + 1) * TEN_MS,
          i % 50 === 0 ? 180 : headingDeg,
          5,
        ]),
      );
    const apart = comparisonOf(weeks(0, 0), weeks(90, 100), 'later').sectors;
    expect([apart[0]!.isApart, apart[2]!.isApart]).toEqual([true, true]);
    const same = comparisonOf(weeks(0, 0), weeks(0, 100), 'later').sectors;
    expect(same.some(({ isApart }) => isApart)).toBe(false);
  });
});
