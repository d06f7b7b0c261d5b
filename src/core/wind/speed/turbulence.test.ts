import { describe, expect, it } from 'vitest';
import { gustFactor, turbulenceIntensity, windRunKm } from './turbulence.ts';

describe('quotients of speeds', () => {
  it('say nothing about still air', () => {
    expect(turbulenceIntensity(0, 0)).toBeNull();
    expect(gustFactor(0, 0)).toBeNull();
  });

  it('are plain quotients otherwise', () => {
    expect(turbulenceIntensity(1, 8)).toBe(0.125);
    expect(gustFactor(12, 8)).toBe(1.5);
  });

  it('take no speeds below nothing', () => {
    expect(() => turbulenceIntensity(-1, 8)).toThrow('wind/bad-reading');
    expect(() => gustFactor(12, NaN)).toThrow('wind/bad-reading');
  });
});

describe('wind run', () => {
  it('is 36 km in two hours of 5 m/s', () => {
    expect(windRunKm(5, 7200)).toBe(36);
  });

  it('needs time to run in', () => {
    expect(() => windRunKm(5, 0)).toThrow('wind/bad-reading');
  });
});
