import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { sectorCentreDeg, sectorShares } from './sectors.ts';

const sixteen = { count: 16, firstCentreDeg: 0 };

/** Weight by sector of readings that each stand for the same. */
function table(count: number, headings: readonly number[], halfWidth: number, firstCentreDeg = 0): number[] {
  const weights = Array<number>(count).fill(0);
  for (const heading of headings) {
    for (const { sector, share } of sectorShares({ count, firstCentreDeg }, heading, halfWidth))
      weights[sector]! += share;
  }
  return weights;
}

const positions = (count: number, from = 0): number[] =>
  Array.from({ length: count }, (_, i) => from + (i * 360) / count);

describe('points in sectors', () => {
  it('show the false petals of 36 directions in 16 sectors: 3, 2, 2, 2 four times over', () => {
    expect(table(16, positions(36), 0)).toEqual([3, 2, 2, 2, 3, 2, 2, 2, 3, 2, 2, 2, 3, 2, 2, 2]);
  });

  it('on an edge belong to the clockwise sector', () => {
    expect(sectorShares(sixteen, 11.25, 0)).toEqual([{ sector: 1, share: 1 }]);
    expect(sectorShares(sixteen, 348.75, 0)).toEqual([{ sector: 0, share: 1 }]);
  });
});

describe('readings over the angle they really cover', () => {
  it.each([
    [36, 16, 5],
    [32, 36, 5.625],
    [30, 16, 6],
    [32, 16, 5.625],
    [16, 36, 11.25],
    [7, 5, 180 / 7],
  ])('%i positions in %i sectors leave no false gap', (count, sectors, halfWidth) => {
    for (const from of [0, 180 / count, 1.234]) {
      for (const weight of table(sectors, positions(count, from), halfWidth)) {
        expect(weight).toBeCloseTo(count / sectors, 9);
      }
    }
  });

  it('share a position on an edge half and half, so that it turns the rose to neither side', () => {
    expect(sectorShares(sixteen, 11.25, 5.625)).toEqual([
      { sector: 0, share: 0.5 },
      { sector: 1, share: 0.5 },
    ]);
  });

  it('touch only the sectors that they cover', () => {
    expect(sectorShares({ count: 16, firstCentreDeg: 5.625 }, 0, 5.625)).toEqual([{ sector: 0, share: 1 }]);
    expect(sectorShares(sixteen, 0, 11.25)).toEqual([{ sector: 0, share: 1 }]);
  });

  it('may cover the whole compass', () => {
    const weights = table(16, [77], 180);
    for (const weight of weights) expect(weight).toBeCloseTo(1 / 16, 12);
  });

  it('are points where they are too narrow to tell from one', () => {
    expect(sectorShares(sixteen, 359, 1e-20)).toEqual([{ sector: 0, share: 1 }]);
  });

  it('always add up to 1, and turn with the rose', () => {
    const heading = fc.double({ min: 0, max: 359.999, noNaN: true });
    const halfWidth = fc.double({ min: 0.001, max: 180, noNaN: true });
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 64 }), heading, halfWidth, (count, middle, half) => {
        const still = table(count, [middle], half);
        expect(still.reduce((sum, weight) => sum + weight, 0)).toBeCloseTo(1, 12);
        const turned = table(count, [middle + 50], half, 50);
        still.forEach((weight, i) => expect(Math.abs(turned[i]! - weight)).toBeLessThan(1e-5));
      }),
      { seed: 20240618 },
    );
  });
});

describe('sectors', () => {
  it('lie astride their middle', () => {
    expect(sectorCentreDeg(sixteen, 1)).toBe(22.5);
    expect(sectorCentreDeg({ count: 4, firstCentreDeg: 45 }, 3)).toBe(315);
  });

  it('are a whole number, up to 720', () => {
    for (const count of [0, 2.5, 721, NaN]) {
      expect(() => sectorShares({ count, firstCentreDeg: 0 }, 0, 1)).toThrow('wind/bad-setting');
    }
  });

  it('take angles only', () => {
    expect(() => sectorShares(sixteen, NaN, 1)).toThrow('wind/bad-reading');
    expect(() => sectorShares(sixteen, 0, 181)).toThrow('wind/bad-reading');
    expect(() => sectorShares(sixteen, 0, NaN)).toThrow('wind/bad-reading');
    expect(() => sectorShares({ ...sixteen, firstCentreDeg: NaN }, 0, 1)).toThrow('wind/bad-reading');
  });
});
