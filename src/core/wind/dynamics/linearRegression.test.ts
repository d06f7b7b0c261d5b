import { describe, expect, it } from 'vitest';
import { seededRandom } from '../../units/index.ts';
import { lineAt, linearRegression } from './linearRegression.ts';

describe('a line through points', () => {
  it('of 1, 2 and 4 at 0, 1 and 2 by hand', () => {
    const fit = linearRegression([0, 1, 2], [1, 2, 4]);
    expect(fit.slope).toBeCloseTo(1.5, 12);
    expect(fit.intercept).toBeCloseTo(5 / 6, 12);
    expect(fit.residualDeviation).toBeCloseTo(Math.sqrt(1 / 6), 12); // residuals 1/6, -1/3, 1/6
    expect(fit.slopeError).toBeCloseTo(Math.sqrt(1 / 12), 12);
    expect(fit.interceptError).toBeCloseTo(Math.sqrt((1 / 6) * (1 / 3 + 1 / 2)), 12);
    expect(fit.covariance).toBeCloseTo(-1 / 12, 12);
  });

  it('is exact through points on a line, and sure of it', () => {
    const fit = linearRegression([1, 2, 3, 4], [3, 5, 7, 9]);
    expect(fit).toMatchObject({ slope: 2, intercept: 1, residualDeviation: 0, correlation: 1 });
    expect(lineAt(fit, 10)).toEqual({ value: 21, lineError: 0, readingError: 0 });
  });

  it('has no correlation with what never changes', () => {
    expect(linearRegression([1, 2, 3], [5, 5, 5])).toMatchObject({ slope: 0, intercept: 5, correlation: 0 });
  });

  it('scatters as its errors say', () => {
    const random = seededRandom(12);
    const x = Array.from({ length: 12 }, (_, i) => 4 + i);
    const fits = Array.from({ length: 2000 }, () =>
      linearRegression(
        x,
        x.map((at) => 0.25 + 0.75 * at + 0.1 * random.normal()),
      ),
    );
    const values = fits.map((fit) => lineAt(fit, 20).value);
    const mean = values.reduce((sum, value) => sum + value, 0) / values.length;
    const scatter = Math.sqrt(values.reduce((sum, value) => sum + (value - mean) ** 2, 0) / values.length);
    const stated = Math.sqrt(
      fits.reduce((sum, fit) => sum + lineAt(fit, 20).lineError ** 2, 0) / fits.length,
    );
    expect(mean).toBeCloseTo(15.25, 2);
    expect(Math.abs(scatter / stated - 1)).toBeLessThan(0.06); // 2000 draws know a deviation to 1.6 %
  });

  it('is least certain far from the points, and always less than a single reading', () => {
    const fit = linearRegression([0, 1, 2], [1, 2, 4]);
    expect(lineAt(fit, 1).lineError).toBeCloseTo(Math.sqrt(1 / 18), 12);
    expect(lineAt(fit, 5).lineError).toBeGreaterThan(lineAt(fit, 1).lineError);
    expect(lineAt(fit, 1).readingError).toBeGreaterThan(lineAt(fit, 1).lineError);
  });

  it('says what is missing', () => {
    expect(() => linearRegression([1, 2], [1, 2])).toThrow('wind/too-few-readings');
    expect(() => linearRegression([1, 2, 3], [1, 2])).toThrow('wind/unequal-lengths');
    expect(() => linearRegression([7, 7, 7], [1, 2, 3])).toThrow('wind/no-variation');
    expect(() => linearRegression([1, 2, NaN], [1, 2, 3])).toThrow('wind/bad-reading');
    expect(() => lineAt(linearRegression([1, 2, 3], [1, 2, 4]), NaN)).toThrow('wind/bad-reading');
  });
});
