import { describe, expect, it } from 'vitest';
import { compassPoint, roseOf, RoseSum } from '../../../src/core/wind/index.ts';
import { numbersIn, reports } from './boston.ts';

const rows = numbersIn('./rose.csv');
const HOUR = 3_600_000;

function roseWith(sectors: number, halfWidthDeg: number) {
  const sum = new RoseSum({
    sectors: { count: sectors, firstCentreDeg: 0 },
    speedBoundsMPerS: [5, 6, 8],
    calmBelowMPerS: 0.5,
    equalWeight: 'reading',
    utcOffsetMin: 0,
  });
  reports.forEach(({ headingDeg, speedMPerS }, i) =>
    sum.add(i * HOUR, headingDeg % 360, speedMPerS, halfWidthDeg),
  );
  return roseOf(sum);
}

describe('the rose of a real day', () => {
  it('counts points as printed: N 12, NNE 2, NE 1, SE 1, SSE 1, S 1, NW 1, NNW 5', () => {
    const counts = roseWith(16, 0).petals.map(({ centreDeg, readings }) => [
      compassPoint(centreDeg),
      readings,
    ]);
    const expected = { N: 12, NNE: 2, NE: 1, SE: 1, SSE: 1, S: 1, NW: 1, NNW: 5 };
    expect(Object.fromEntries(counts.filter(([, readings]) => readings !== 0))).toEqual(expected);
  });

  it.each([16, 36, 12])(
    'spread over ±5° agrees with numpy in %i sectors and every speed class',
    (sectors) => {
      const { petals } = roseWith(sectors, 5);
      const expected = rows.filter(([count]) => count === sectors);
      expect(expected.length).toBe(sectors);
      for (const [, sector, ...classes] of expected) {
        for (const [i, weight] of classes.entries()) {
          // Brute force with ten thousand directions a report is right to 1e-4 of a report; 12 reports at most.
          expect(Math.abs(petals[sector!]!.byClass[i]! * 24 - weight)).toBeLessThan(1.2e-3);
        }
      }
    },
  );
});
