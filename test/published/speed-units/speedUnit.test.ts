import { describe, expect, it } from 'vitest';
import { speedFrom, speedIn, speedUnits } from '../../../src/core/wind/index.ts';

describe('units of speed', () => {
  it.each([
    ['m/s', 1],
    ['km/h', 1 / 3.6],
    ['kt', 0.5144444444444445],
    ['mph', 0.44704],
    ['ft/s', 0.3048],
  ] as const)('1 %s is %f m/s', (unit, speed) => {
    expect(Math.abs(speedFrom(1, unit) - speed)).toBeLessThan(1e-15);
  });

  it('are whole where the definition is whole', () => {
    expect(speedFrom(3.6, 'km/h')).toBe(1);
    expect(speedFrom(3600, 'kt')).toBe(1852);
    expect(speedIn(1852, 'kt')).toBe(3600);
  });

  it('come back as they went', () => {
    for (const unit of speedUnits) expect(speedIn(speedFrom(12.5, unit), unit)).toBeCloseTo(12.5, 12);
  });

  it('do not turn nonsense into a speed', () => {
    expect(() => speedFrom(NaN, 'kt')).toThrow('wind/bad-reading');
    expect(() => speedIn(Infinity, 'kt')).toThrow('wind/bad-reading');
  });
});
