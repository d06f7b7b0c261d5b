import { describe, expect, it } from 'vitest';
import { seededRandom } from '../../units/index.ts';
import { weibullQuantile } from './weibull.ts';
import { weibullFit } from './weibullFit.ts';

const twelve = [2.1, 3.4, 5.6, 4.8, 6.1, 7.3, 8.9, 3.2, 5.0, 6.6, 4.1, 9.4];

describe('a Weibull fit', () => {
  it('leaves calms out of the curve and reports them', () => {
    const fit = weibullFit([...twelve, 0, 0, 0, 0]);
    expect(fit.calmShare).toBe(0.25);
    expect(fit.readings).toBe(12);
    expect(fit.shape).toBeCloseTo(weibullFit(twelve).shape, 12);
  });

  it('scales with the unit, and keeps its shape', () => {
    const [fit, kilo] = [weibullFit(twelve), weibullFit(twelve.map((speed) => speed * 1e6))];
    expect(kilo.shape).toBeCloseTo(fit.shape, 10);
    expect(kilo.scaleMPerS / fit.scaleMPerS).toBeCloseTo(1e6, 3);
    expect(kilo.scaleErrorMPerS / fit.scaleErrorMPerS).toBeCloseTo(1e6, 3);
  });

  it('counts a weight of 2 as two readings', () => {
    const twice = weibullFit([...twelve, ...twelve]);
    const weighted = weibullFit(twelve, { weights: twelve.map(() => 2) });
    expect(weighted.shape).toBeCloseTo(twice.shape, 12);
    expect(weighted.shapeError).toBeCloseTo(twice.shapeError, 12);
    expect(weighted.logLikelihood).toBeCloseTo(twice.logLikelihood, 9);
  });

  it('is less sure when fewer readings are independent', () => {
    const [all, few] = [weibullFit(twelve), weibullFit(twelve, { independentReadings: 3 })];
    expect(few.shapeError / all.shapeError).toBeCloseTo(2, 12);
    expect(few.scaleErrorMPerS / all.scaleErrorMPerS).toBeCloseTo(2, 12);
    expect(few.shape).toBe(all.shape);
  });

  it('holds the truth in about 95 of 100 samples', () => {
    const random = seededRandom(77);
    const truth = { shape: 1.8, scaleMPerS: 6 };
    let [shapes, scales] = [0, 0];
    for (let sample = 0; sample < 300; sample++) {
      const fit = weibullFit(Array.from({ length: 60 }, () => weibullQuantile(truth, random.uniform())));
      if (fit.shapeInterval.low <= 1.8 && 1.8 <= fit.shapeInterval.high) shapes++;
      if (fit.scaleIntervalMPerS.low <= 6 && 6 <= fit.scaleIntervalMPerS.high) scales++;
    }
    for (const held of [shapes, scales]) {
      expect(held / 300).toBeGreaterThan(0.91);
      expect(held / 300).toBeLessThan(0.99);
    }
  });

  it('finds very steep and very flat shapes', () => {
    for (const shape of [0.2, 0.7, 12, 80]) {
      const speeds = Array.from({ length: 500 }, (_, i) =>
        weibullQuantile({ shape, scaleMPerS: 9 }, (i + 0.5) / 500),
      );
      expect(Math.abs(weibullFit(speeds).shape / shape - 1)).toBeLessThan(0.02);
    }
  });

  it('says what is missing', () => {
    expect(() => weibullFit([])).toThrow('wind/no-readings');
    expect(() => weibullFit([0, 0, 3])).toThrow('wind/too-few-readings');
    expect(() => weibullFit([5, 5, 5])).toThrow('wind/no-variation');
    expect(() => weibullFit([5, NaN])).toThrow('wind/bad-reading');
    expect(() => weibullFit([5, -1])).toThrow('wind/bad-reading');
    expect(() => weibullFit([5, 6], { weights: [1] })).toThrow('wind/unequal-lengths');
    expect(() => weibullFit([5, 6], { weights: [1, NaN] })).toThrow('wind/bad-reading');
    expect(() => weibullFit([5, 6], { independentReadings: 0 })).toThrow('wind/bad-reading');
  });
});
