import { describe, expect, it } from 'vitest';
import { speedMoments } from '../speed/speedSum.ts';
import { windSeries } from '../../../../test/support/windSeries.ts';
import { SpeedCounts } from './speedCounts.ts';
import { weibullFit } from './weibullFit.ts';

describe('counts of speeds', () => {
  it('keep a log written to 0.1 m/s exactly', () => {
    const counts = new SpeedCounts(0.1);
    for (const speed of [0, 0.1, 0.3, 0.3, 7.7]) counts.add(speed);
    const { speeds, weights } = counts.occurring();
    expect(speeds.map((speed) => Number(speed.toFixed(6)))).toEqual([0, 0.1, 0.3, 7.7]);
    expect(weights).toEqual([1, 1, 2, 1]);
  });

  it('serve for a fit as well as the speeds themselves', () => {
    const speeds = windSeries({ seed: 31, count: 5000, intervalMs: 1000, memory: 5 }).map(
      ({ speedMPerS }) => speedMPerS,
    );
    const counts = new SpeedCounts(0.1);
    speeds.forEach((speed) => counts.add(speed));
    const { speeds: classes, weights } = counts.occurring();
    const [fine, direct] = [weibullFit(classes, { weights }), weibullFit(speeds)];
    // Speeds below half a class become calms, which no curve holds: three in a thousand here.
    expect(Math.abs(fine.scaleMPerS / direct.scaleMPerS - 1)).toBeLessThan(0.003);
    expect(fine.readings).toBeLessThanOrEqual(direct.readings);
    const mean = classes.reduce((sum, speed, i) => sum + speed * weights[i]!, 0) / 5000;
    expect(mean).toBeCloseTo(speedMoments(speeds).meanMPerS, 2);
  });

  it('join those of the same classes only', () => {
    const [a, b] = [new SpeedCounts(0.5), new SpeedCounts(0.5)];
    a.add(1, 2);
    b.add(1.1);
    a.merge(b);
    expect(a.occurring()).toEqual({ speeds: [1], weights: [3] });
    expect(() => a.merge(new SpeedCounts(0.1))).toThrow('wind/different-layout');
  });

  it('refuse what is no wind on earth', () => {
    const counts = new SpeedCounts(0.1);
    for (const speed of [-0.1, NaN, 151]) expect(() => counts.add(speed)).toThrow('wind/bad-reading');
    expect(() => counts.add(150, NaN)).toThrow('wind/bad-reading');
    expect(() => new SpeedCounts(0)).toThrow('wind/bad-setting');
  });
});
