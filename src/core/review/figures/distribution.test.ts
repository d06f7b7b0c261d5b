import { describe, expect, it } from 'vitest';
import { calmPeriod, steadyPeriod, TEN_MS } from '../../../../test/support/reviewPeriods.ts';
import type { ReviewPeriod } from '../sum/reviewPeriod.ts';
import { distributionOf } from './distribution.ts';

const WEEK_MS = 7 * 86_400_000;
const WEEKS = 20;
const EACH = 500;
const SHAPE = 2;
const SCALE = 6;

/** Speed below which a share of the time lies: the quantile of Weibull's distribution, closed form. [m/s] */
const quantile = (share: number): number => SCALE * (-Math.log(1 - share)) ** (1 / SHAPE);

/** Twenty weeks whose ten-minute means are the quantiles of one distribution, dealt to the weeks in turn. */
const weibull: readonly ReviewPeriod[] = Array.from({ length: WEEKS * EACH }, (_, i) => {
  const endMs = (i % WEEKS) * WEEK_MS + (Math.floor(i / WEEKS) + 1) * TEN_MS;
  // Every share once, in an order that puts strong and light wind in each week: 3 has no factor of 10 000.
  return steadyPeriod(endMs, { speedMPerS: quantile((((i * 3) % (WEEKS * EACH)) + 0.5) / (WEEKS * EACH)) });
});

describe('the distribution of ten-minute means', () => {
  it('gives back the Weibull distribution that the means were drawn from', () => {
    const { weibull: fit } = distributionOf(weibull, 1000)!;
    if ('why' in fit) throw new Error(fit.why);
    expect(Math.abs(fit.shape - SHAPE)).toBeLessThan(0.01);
    expect(Math.abs(fit.scaleMPerS - SCALE)).toBeLessThan(0.03);
  });

  it('has the shares of that distribution in each class of 1 m/s', () => {
    const { shares } = distributionOf(weibull, 1000)!;
    const below = (speed: number): number => 1 - Math.exp(-((speed / SCALE) ** SHAPE));
    shares.forEach((share, i) => expect(Math.abs(share - (below(i + 1) - below(i)))).toBeLessThan(2e-4));
    expect(shares.reduce((a, b) => a + b)).toBeCloseTo(1, 12);
  });

  it('has its power: half of 1.225 kg/m³ times the cube of the scale times the gamma function of 2.5', () => {
    const { power } = distributionOf(weibull, 1000)!;
    if ('why' in power) throw new Error(power.why);
    const gamma = 0.75 * Math.sqrt(Math.PI); // 1.5 times 0.5 times the root of pi
    expect(power.wattsPerM2 / (0.5 * 1.225 * SCALE ** 3 * gamma)).toBeCloseTo(1, 2);
    expect(power.standardError).toBeGreaterThan(0);
  });

  it('sorts by the bounds of the Beaufort scale as printed: 0.3, 1.6, 3.4, 5.5, 8.0, 10.8 m/s', () => {
    const speeds = [0.2, 0.3, 1.5, 1.6, 3.4, 5.4, 5.5, 7.9, 8, 10.7, 10.8];
    const { forces } = distributionOf(
      speeds.map((speedMPerS, i) => steadyPeriod((i + 1) * TEN_MS, { speedMPerS })),
      1000,
    )!;
    expect(forces.map(({ figures }) => figures.periods)).toEqual([1, 2, 1, 2, 2, 2, 1]);
    expect(forces.map(({ share }) => Math.round(11 * share))).toEqual([1, 2, 1, 2, 2, 2, 1]);
  });
});

describe('a distribution that cannot be told', () => {
  it('of less than two weeks has no fit and no power, and says why', () => {
    const { weibull: fit, power } = distributionOf([steadyPeriod(TEN_MS, {})], 1000)!;
    expect(fit).toHaveProperty('why');
    expect(power).toHaveProperty('why');
  });

  it('of calms alone has no fit, and says why', () => {
    const calms = Array.from({ length: 4 }, (_, week) => calmPeriod(week * WEEK_MS + TEN_MS));
    const found = distributionOf(calms, 1000)!;
    expect(found.weibull).toHaveProperty('why');
    expect(found.shares).toEqual([1]);
  });

  it('of no speed at all is none', () => {
    expect(distributionOf([steadyPeriod(TEN_MS, {}, { meanMPerS: null })], 1000)).toBeNull();
  });
});
