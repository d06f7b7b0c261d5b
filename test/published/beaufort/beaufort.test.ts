import { describe, expect, it } from 'vitest';
import { beaufortForce, beaufortScale } from '../../../src/core/wind/index.ts';

const NAMES =
  'calm, light air, light breeze, gentle breeze, moderate breeze, fresh breeze, strong breeze, near gale, gale, strong gale, storm, violent storm, hurricane';

describe('the Beaufort scale', () => {
  it.each([
    [0, 0],
    [0.29, 0],
    [0.3, 1],
    [3.3, 2],
    [3.4, 3],
    [17.1, 7],
    [17.2, 8],
    [32.6, 11],
    [32.7, 12],
    [80, 12],
  ])('%f m/s is force %i', (speed, force) => {
    expect(beaufortForce(speed).force).toBe(force);
  });

  it('has the printed names, in order', () => {
    expect(beaufortScale.map(({ name }) => name).join(', ')).toBe(NAMES);
  });

  it('follows v = 0.836 B^1.5 half-way between two forces, to 0.13 m/s', () => {
    for (const { force, fromMPerS } of beaufortScale.slice(1)) {
      expect(Math.abs(0.836 * (force - 0.5) ** 1.5 - fromMPerS)).toBeLessThan(0.13);
    }
  });

  it('does not take a wind below nothing', () => {
    expect(() => beaufortForce(-0.1)).toThrow('wind/bad-reading');
  });
});
