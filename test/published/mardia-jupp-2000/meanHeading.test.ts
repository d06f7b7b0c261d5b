import { readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { meanHeading } from '../../../src/core/wind/index.ts';

const lines = readFileSync(new URL('./roulette.csv', import.meta.url), 'utf8')
  .trim()
  .split('\n');
const roulette = lines.slice(1).map(Number);

it('Example 1.1: mean direction 51°, mean resultant length 0.711', () => {
  expect(roulette.length).toBe(9);
  const { headingDeg, agreement } = meanHeading(roulette);
  expect(Math.abs(headingDeg! - 51)).toBeLessThanOrEqual(0.5); // printed to 1°
  expect(Math.abs(agreement - 0.711)).toBeLessThanOrEqual(0.0005); // printed to 3 places
});
