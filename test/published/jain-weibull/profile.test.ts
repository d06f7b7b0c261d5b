import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { groundKinds, logProfile, powerProfile, shearExponent } from '../../../src/core/wind/index.ts';

const open = { roughnessM: 0.1, displacementM: 0 };

describe('the logarithmic law', () => {
  it('takes 7.7 m/s at 20 m over 0.1 m of roughness to 9.2966 m/s at 60 m', () => {
    const { speedMPerS } = logProfile(7.7, { fromM: 20, toM: 60 }, open);
    expect(Math.abs(speedMPerS - 9.2966)).toBeLessThanOrEqual(5e-5);
    expect(Math.abs(speedMPerS - 9.296604)).toBeLessThanOrEqual(5e-7);
  });

  it('comes back to where it began', () => {
    const up = logProfile(5, { fromM: 10, toM: 40 }, { roughnessM: 0.03, displacementM: 2 }).speedMPerS;
    const down = logProfile(up, { fromM: 40, toM: 10 }, { roughnessM: 0.03, displacementM: 2 });
    expect(down.speedMPerS).toBeCloseTo(5, 12);
  });

  it('has nothing to say where it holds, and says where it does not', () => {
    const codes = (fromM: number, toM: number) =>
      logProfile(5, { fromM, toM }, open).cautions.map(({ code, got }) => `${code} ${got}`);
    expect(codes(10, 15)).toEqual([]);
    expect(codes(10, 16)).toEqual(['wind/far-step 16 m from 10 m']);
    expect(codes(1.9, 2)).toEqual(['wind/height-beyond-law 1.9 m']);
    expect(codes(80, 110)).toEqual(['wind/height-beyond-law 110 m']);
  });

  it('has no wind at the roughness length', () => {
    expect(() => logProfile(5, { fromM: 10, toM: 0.1 }, open)).toThrow('wind/height-too-low');
    expect(() => logProfile(5, { fromM: 3, toM: 9 }, { roughnessM: 0.5, displacementM: 2.5 })).toThrow(
      'wind/height-too-low',
    );
    expect(() => logProfile(5, { fromM: 10, toM: 20 }, { ...open, roughnessM: 0 })).toThrow(
      'wind/bad-reading',
    );
  });
});

describe('the power law', () => {
  it.each([
    [1 / 7, 6.292495],
    [0.2, 6.898648],
  ])('takes 5 m/s at 10 m by an exponent of %f to %f m/s at 50 m', (exponent, speed) => {
    const far = powerProfile(5, { fromM: 10, toM: 50 }, exponent);
    expect(Math.abs(far.speedMPerS - speed)).toBeLessThan(5e-7);
    expect(far.cautions.map(({ code }) => code)).toEqual(['wind/far-step']);
  });

  it('gives its exponent back from two heights', () => {
    const high = powerProfile(5, { fromM: 10, toM: 14 }, 0.2);
    expect(high.cautions).toEqual([]);
    const found = shearExponent({ heightM: 10, speedMPerS: 5 }, { heightM: 14, speedMPerS: high.speedMPerS });
    expect(found).toBeCloseTo(0.2, 12);
  });

  it('needs two heights, and wind at both', () => {
    const at = (heightM: number, speedMPerS: number) => ({ heightM, speedMPerS });
    expect(() => shearExponent(at(10, 5), at(10, 6))).toThrow('wind/no-variation');
    expect(() => shearExponent(at(10, 0), at(20, 6))).toThrow('wind/bad-reading');
    expect(() => powerProfile(5, { fromM: 0, toM: 10 }, 0.2)).toThrow('wind/bad-reading');
  });
});

it('Table 3-5: kinds of ground, smoothest first', () => {
  const lines = readFileSync(new URL('./ground.csv', import.meta.url), 'utf8')
    .trim()
    .split('\n')
    .slice(1);
  expect(groundKinds.map((kind) => `${kind.roughnessM},${kind.shearExponent}`)).toEqual(lines);
});
