import { describe, expect, it } from 'vitest';
import { airDensity, powerDensity, STANDARD_AIR_KG_PER_M3 } from './powerDensity.ts';

const sure = { meanCubeError: 0, airKgPerM3: 1.225, airRelativeError: 0, speedRelativeError: 0 };

describe('the power in the wind', () => {
  it.each([
    [1, 0.6125],
    [5, 76.5625],
    [7, 210.0875],
    [10, 612.5],
    [15, 2067.1875],
    [20, 4900],
  ])('of a steady %f m/s is %f W/m²', (speed, watts) => {
    expect(powerDensity({ ...sure, meanCube: speed ** 3 }).wattsPerM2).toBeCloseTo(watts, 9);
  });

  it('is uncertain three times as much as the cups, and adds its causes as squares', () => {
    const { wattsPerM2, standardError, parts } = powerDensity({
      meanCube: 1000,
      meanCubeError: 40,
      airKgPerM3: 1.225,
      airRelativeError: 0.01,
      speedRelativeError: 0.02,
    });
    expect(wattsPerM2).toBe(612.5);
    expect(parts.record).toBeCloseTo(24.5, 12);
    expect(parts.cups).toBeCloseTo(36.75, 12);
    expect(parts.air).toBeCloseTo(6.125, 12);
    expect(standardError).toBeCloseTo(Math.sqrt(24.5 ** 2 + 36.75 ** 2 + 6.125 ** 2), 12);
  });

  it('needs a mean cube and errors that can be', () => {
    expect(() => powerDensity({ ...sure, meanCube: -1 })).toThrow('wind/bad-reading');
    expect(() => powerDensity({ ...sure, meanCube: 1, airKgPerM3: 0 })).toThrow('wind/bad-reading');
    expect(() => powerDensity({ ...sure, meanCube: 1, speedRelativeError: NaN })).toThrow('wind/bad-reading');
  });
});

describe('the density of air', () => {
  it('is 1.225 kg/m³ at 15 °C and 101 325 Pa', () => {
    expect(airDensity(101_325, 15)).toBeCloseTo(1.225012, 6);
    expect(STANDARD_AIR_KG_PER_M3).toBeCloseTo(airDensity(101_325, 15), 4);
  });

  it('does not exist below absolute zero or without pressure', () => {
    expect(() => airDensity(101_325, -273.15)).toThrow('wind/bad-reading');
    expect(() => airDensity(0, 15)).toThrow('wind/bad-reading');
  });
});
