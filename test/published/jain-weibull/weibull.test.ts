import { describe, expect, it } from 'vitest';
import {
  powerDensity,
  weibullMode,
  weibullMoment,
  weibullQuantile,
  weibullShareBelow,
} from '../../../src/core/wind/index.ts';

describe('Table 3-1', () => {
  it.each([
    [8, 1, 8.0, 0],
    [8, 1.5, 7.222, 3.846],
    [8, 2, 7.09, 5.657],
    [8, 2.5, 7.098, 6.522],
    [8, 3, 7.144, 6.989],
    [10, 1, 10.0, 0],
    [10, 1.5, 9.027, 4.807],
    [10, 2, 8.862, 7.071],
    [10, 2.5, 8.873, 8.152],
    [10, 3, 8.93, 8.736],
  ])('scale %f and shape %f have mean %f and mode %f m/s', (scaleMPerS, shape, mean, mode) => {
    expect(Math.abs(weibullMoment({ shape, scaleMPerS }, 1) - mean)).toBeLessThanOrEqual(5e-4);
    expect(Math.abs(weibullMode({ shape, scaleMPerS }) - mode)).toBeLessThanOrEqual(5e-4);
  });
});

describe('a Rayleigh wind with a mean of 7 m/s', () => {
  const rayleigh = { shape: 2, scaleMPerS: 7 / weibullMoment({ shape: 2, scaleMPerS: 1 }, 1) };

  it('has scale 7.898654, median 6.576061 and mode 5.585192 m/s', () => {
    expect(Math.abs(rayleigh.scaleMPerS - 7.898654)).toBeLessThan(5e-7);
    expect(Math.abs(weibullQuantile(rayleigh, 0.5) - 6.576061)).toBeLessThan(5e-7);
    expect(Math.abs(weibullMode(rayleigh) - 5.585192)).toBeLessThan(5e-7);
  });

  it('holds 401.2376 W/m², 6/π times what its mean would', () => {
    const meanCube = weibullMoment(rayleigh, 3);
    const sure = { meanCubeError: 0, airKgPerM3: 1.225, airRelativeError: 0, speedRelativeError: 0 };
    expect(Math.abs(powerDensity({ meanCube, ...sure }).wattsPerM2 - 401.2376)).toBeLessThan(5e-5);
    expect(meanCube / 7 ** 3).toBeCloseTo(6 / Math.PI, 12);
  });
});

describe('any Weibull wind', () => {
  const wind = { shape: 1.8, scaleMPerS: 7.534128 };

  it('has its shares and speeds agree', () => {
    for (const share of [0, 0.01, 0.5, 0.99, 0.999999]) {
      expect(weibullShareBelow(wind, weibullQuantile(wind, share))).toBeCloseTo(share, 12);
    }
    expect(weibullShareBelow(wind, wind.scaleMPerS)).toBeCloseTo(1 - Math.exp(-1), 12);
  });

  it('with shape 1.8 and mean 6.7 holds 394.1114 W/m²', () => {
    expect(weibullMoment(wind, 1)).toBeCloseTo(6.7, 6);
    expect((weibullMoment(wind, 3) * 1.225) / 2).toBeCloseTo(394.1114, 3);
  });

  it('needs a shape, a scale, and shares below 1', () => {
    expect(() => weibullMode({ shape: 0, scaleMPerS: 8 })).toThrow('wind/bad-reading');
    expect(() => weibullMoment({ shape: 2, scaleMPerS: NaN }, 1)).toThrow('wind/bad-reading');
    expect(() => weibullQuantile(wind, 1)).toThrow('wind/bad-reading');
    expect(() => weibullShareBelow(wind, -1)).toThrow('wind/bad-reading');
  });
});
