import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import { sectorAdvice } from '../index.ts';

/** Positions whose middles lie in each sector, by plain angles; null where a middle lies on a border. */
function countByAngle(positions: number, sectors: number, northShift: number): number[] | null {
  const counts = Array<number>(sectors).fill(0);
  for (let k = 0; k < positions; k++) {
    const middle = ((k + northShift) * 360) / positions;
    const place = middle / (360 / sectors) + 0.5;
    if (Math.abs(place - Math.round(place)) < 1e-9) return null;
    counts[Math.floor(place) % sectors]! += 1;
  }
  return counts;
}

describe('a disc and its rose', () => {
  it('puts an edge of the code on north for 32 positions in 16 sectors', () => {
    expect(sectorAdvice(32, [16])).toMatchObject([{ isFair: true, north: 'edge', least: 2, most: 2 }]);
  });

  it('puts the middle of a position on north for 16 in 16, and 36 in 12', () => {
    expect(sectorAdvice(16, [16])).toMatchObject([{ isFair: true, north: 'centre', least: 1, most: 1 }]);
    expect(sectorAdvice(36, [12])).toMatchObject([{ isFair: true, north: 'centre', least: 3, most: 3 }]);
  });

  it('warns of a false factor of two for 30 positions in 16 sectors', () => {
    const [fit] = sectorAdvice(30, [16]);
    expect(fit).toMatchObject({ isFair: false, north: null, least: 1, most: 2 });
    expect(fit!.advice).toContain('take 16 or 32 positions');
  });

  it('warns of empty sectors for 32 positions in 36', () => {
    expect(sectorAdvice(32, [36])).toMatchObject([{ isFair: false, least: 0, most: 1 }]);
  });

  it('is fair when its middles are counted by their angles, for any whole share', () => {
    fc.assert(
      fc.property(fc.integer({ min: 2, max: 40 }), fc.integer({ min: 1, max: 12 }), (sectors, each) => {
        const [fit] = sectorAdvice(sectors * each, [sectors]);
        const shift = fit!.north === 'edge' ? 0.5 : 0;
        expect(countByAngle(sectors * each, sectors, shift)).toEqual(Array(sectors).fill(each));
        // The other way round some middles lie on a border of two sectors.
        expect(countByAngle(sectors * each, sectors, 0.5 - shift)).toBeNull();
      }),
      { seed: 78 },
    );
  });

  it('asks about the usual roses when not told which', () => {
    expect(sectorAdvice(360).map(({ sectors, isFair }) => [sectors, isFair])).toEqual([
      [4, true],
      [8, true],
      [12, true],
      [16, false],
      [32, false],
      [36, true],
    ]);
  });
});
