import { readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { meanHeading } from '../../../src/core/wind/index.ts';

const lines = readFileSync(new URL('./directions.csv', import.meta.url), 'utf8')
  .trim()
  .split('\n');
const directions = lines.slice(1).map(Number);

it('nineteen scattered winds have a mean of 16.706621° and an agreement of 0.517141633', () => {
  expect(directions.length).toBe(19);
  const { headingDeg, agreement } = meanHeading(directions);
  expect(Math.abs(headingDeg! - 16.706621)).toBeLessThan(1e-6);
  expect(Math.abs(agreement - 0.517141633)).toBeLessThan(1e-9);
});
