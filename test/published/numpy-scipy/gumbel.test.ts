import { describe, expect, it } from 'vitest';
import { gumbelFit, gumbelReturn } from '../../../src/core/wind/index.ts';

// Printed by distributions.py; the maxima are invented.
const maxima = [21.4, 24.1, 19.8, 26.7, 22.3, 23.9, 20.5, 28.2, 22.8, 25.0, 21.1, 23.3];

describe('yearly maxima, by scipy and a root finder', () => {
  const fit = gumbelFit(maxima);

  it('have the same location and scale', () => {
    expect(Math.abs(fit.locationMPerS - 22.124370983)).toBeLessThan(1e-8);
    expect(Math.abs(fit.scaleMPerS - 1.964229324)).toBeLessThan(1e-8);
  });

  it.each([
    [10, 26.544608477],
    [25, 28.407025774],
    [48, 29.707656943],
  ])('are exceeded once in %i years by the same speed', (years, speed) => {
    expect(Math.abs(gumbelReturn(fit, years, maxima.length).speedMPerS - speed)).toBeLessThan(1e-7);
  });
});
