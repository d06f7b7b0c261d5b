import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { linearRegression } from '../../../src/core/wind/index.ts';

const rows = readFileSync(new URL('./norris.csv', import.meta.url), 'utf8')
  .trim()
  .split('\n')
  .slice(1)
  .map((line) => line.split(',').map(Number));
const fit = linearRegression(
  rows.map(([, x]) => x!),
  rows.map(([y]) => y!),
);

describe('the certified line', () => {
  it.each([
    ['intercept', fit.intercept, -0.262323073774029],
    ['its standard deviation', fit.interceptError, 0.232818234301152],
    ['slope', fit.slope, 1.00211681802045],
    ['its standard deviation', fit.slopeError, 0.429796848199937e-3],
    ['residual standard deviation', fit.residualDeviation, 0.884796396144373],
    ['R squared', fit.correlation ** 2, 0.999993745883712],
  ])('%s', (_, found, certified) => {
    expect(Math.abs(found / certified - 1)).toBeLessThan(1e-11);
  });

  it('rests on all 36 points', () => {
    expect(fit.residuals.length).toBe(36);
  });
});
