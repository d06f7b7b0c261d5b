import { expect, it } from 'vitest';
import { steadyPeriod } from '../../../../test/support/reviewPeriods.ts';
import { topGusts } from './gusts.ts';

const HOUR_MS = 3_600_000;
const gusty = (hour: number, speedMPerS: number, headingDeg = 230) =>
  steadyPeriod(
    hour * HOUR_MS,
    { headingDeg, speedMPerS: 10 },
    { gust: { speedMPerS, atMs: hour * HOUR_MS - 60_000 } },
  );

it('lists the highest gust of each blow, highest first', () => {
  // 30 and 29 m/s are of one blow, 47 h apart; 28 m/s came 48 h after the first, 20 m/s long before.
  const top = topGusts([gusty(10, 20), gusty(500, 30), gusty(547, 29), gusty(548, 28)], 10);
  expect(top.map(({ speedMPerS, endMs }) => [speedMPerS, endMs / HOUR_MS])).toEqual([
    [30, 500],
    [28, 548],
    [20, 10],
  ]);
});

it('has the mean and the heading of the ten minutes of each gust', () => {
  const [top] = topGusts([gusty(10, 20, 300)], 10);
  expect(top!.meanMPerS).toBe(10);
  expect(top!.headingDeg).toBeCloseTo(300, 9);
});

it('lists no more than asked for, and nothing where samples are too far apart for a gust', () => {
  expect(topGusts([gusty(100, 20), gusty(200, 21), gusty(300, 22)], 2)).toHaveLength(2);
  expect(topGusts([steadyPeriod(HOUR_MS, {}, { gust: null })], 10)).toEqual([]);
});
