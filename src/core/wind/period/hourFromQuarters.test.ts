import { describe, expect, it } from 'vitest';
import { windSeries } from '../../../../test/support/windSeries.ts';
import { turnBetween } from '../../units/index.ts';
import { meanHeading } from '../direction/meanHeading.ts';
import { hourHeading, hourSpread } from './hourFromQuarters.ts';

describe('an hour from its quarters', () => {
  const headings = windSeries({ seed: 3, count: 3600, intervalMs: 1000, memory: 300 }).map(
    (s) => s.headingDeg,
  );
  const quarters = [0, 1, 2, 3].map((i) => {
    const part = headings.slice(i * 900, (i + 1) * 900 - i * 100); // quarters of unequal count
    return { ...meanHeading(part), readings: part.length, part };
  });

  it('has the mean heading of its readings, not that of its four means', () => {
    const whole = meanHeading(quarters.flatMap(({ part }) => part));
    const hour = hourHeading(quarters)!;
    expect(Math.abs(turnBetween(hour.headingDeg!, whole.headingDeg!))).toBeLessThan(1e-9);
    expect(hour.agreement).toBeCloseTo(whole.agreement, 12);
    const ofMeans = meanHeading(quarters.map(({ headingDeg }) => headingDeg!));
    expect(Math.abs(turnBetween(ofMeans.headingDeg!, whole.headingDeg!))).toBeGreaterThan(0.1);
  });

  it('lets a quarter that cancelled out weaken the agreement', () => {
    const none = { headingDeg: null, agreement: 0, readings: 900 };
    const clear = { headingDeg: 90, agreement: 1, readings: 900 };
    const hour = hourHeading([none, clear])!;
    expect(hour.headingDeg).toBeCloseTo(90, 9);
    expect(hour.agreement).toBeCloseTo(0.5, 12);
  });

  it('is not made of one quarter', () => {
    expect(hourHeading([quarters[0]!, null, null, null])).toBeNull();
    expect(hourHeading([])).toBeNull();
  });

  it('refuses quarters that cannot be', () => {
    const quarter = { headingDeg: 90, agreement: 1, readings: 900 };
    expect(() => hourHeading([quarter, { ...quarter, agreement: 1.5 }])).toThrow('wind/bad-reading');
    expect(() => hourHeading([quarter, { ...quarter, readings: NaN }])).toThrow('wind/bad-reading');
    expect(() => hourHeading([quarter, { ...quarter, headingDeg: NaN }])).toThrow('wind/bad-reading');
    const empty = { ...quarter, readings: 0 };
    expect(() => hourHeading([empty, empty])).toThrow('wind/no-readings');
    expect(() => hourSpread([5, -1])).toThrow('wind/bad-reading');
  });
});
