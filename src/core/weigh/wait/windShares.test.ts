import { describe, expect, it } from 'vitest';
import { seededRandom } from '../../units/index.ts';
import { arcPlaces, windShares } from './windShares.ts';

describe('where the wind is commonest and rarest', () => {
  it('is the middle of the sector that has most, and of the stretch that has none', () => {
    // Eight sectors; south has most, and nothing comes from north-west over north to north-east: 292.5 to 67.5.
    const { most, least } = arcPlaces(windShares([0, 0, 1, 3, 9, 3, 1, 0]), 15);
    expect(most).toEqual({ atDeg: 180, share: expect.closeTo((9 / 17) * (15 / 45), 12) as number });
    expect(least.atDeg).toBe(0);
    expect(least.share).toBeCloseTo(0, 12);
  });

  it('is north where all directions are alike', () => {
    const { most, least } = arcPlaces(windShares(null), 30);
    expect([most.atDeg, least.atDeg]).toEqual([0, 0]);
  });
});

it('draws headings by their shares', () => {
  const shares = windShares([1, 2, 3, 4]);
  const random = seededRandom(5);
  const draws = Array.from({ length: 20_000 }, () => shares.draw(random));
  expect(Math.min(...draws)).toBeGreaterThanOrEqual(0);
  expect(Math.max(...draws)).toBeLessThan(360);
  const south = draws.filter((deg) => deg >= 135 && deg < 225).length / draws.length;
  expect(Math.abs(south - 0.3)).toBeLessThan(4 * Math.sqrt((0.3 * 0.7) / draws.length));
});
