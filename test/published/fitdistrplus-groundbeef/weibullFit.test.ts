import { describe, expect, it } from 'vitest';
import { weibullFit, weibullQuantile } from '../../../src/core/wind/index.ts';

describe('twelve speeds fitted by a root finder', () => {
  const fit = weibullFit([2.1, 3.4, 5.6, 4.8, 6.1, 7.3, 8.9, 3.2, 5.0, 6.6, 4.1, 9.4]);

  it('have the same shape, scale and likelihood', () => {
    expect(Math.abs(fit.shape - 2.8165063989)).toBeLessThan(1e-9);
    expect(Math.abs(fit.scaleMPerS - 6.2383577194)).toBeLessThan(1e-9);
    expect(Math.abs(fit.logLikelihood + 25.934837862)).toBeLessThan(1e-8);
  });

  it('have the standard errors of the curvature of the likelihood', () => {
    expect(Math.abs(fit.shapeError - 0.637462)).toBeLessThan(5e-6);
    expect(Math.abs(fit.scaleErrorMPerS - 0.675153)).toBeLessThan(5e-6);
  });
});

describe('254 readings spread like the published servings', () => {
  const published = { shape: 2.18588486, scaleMPerS: 83.34767905 };
  const readings = Array.from({ length: 254 }, (_, i) => weibullQuantile(published, (i + 0.5) / 254));
  const fit = weibullFit(readings);

  it('give the published distribution back to a hundredth', () => {
    expect(Math.abs(fit.shape / published.shape - 1)).toBeLessThan(0.01);
    expect(Math.abs(fit.scaleMPerS / published.scaleMPerS - 1)).toBeLessThan(0.01);
  });

  it('have standard errors within 3 % of the published 0.10457555 and 2.52686246', () => {
    expect(Math.abs(fit.shapeError / 0.10457555 - 1)).toBeLessThan(0.03);
    expect(Math.abs(fit.scaleErrorMPerS / 2.52686246 - 1)).toBeLessThan(0.03);
  });
});
