import { describe, expect, it } from 'vitest';
import { calmThreshold, isCalm } from '../../../src/core/wind/index.ts';

describe('calms (6.2.3)', () => {
  it('lie below the threshold of cups or vane, whichever is greater', () => {
    expect(calmThreshold({ cupsStartMPerS: 0.3, vaneStartMPerS: 0.5 })).toBe(0.5);
    expect(calmThreshold({ cupsStartMPerS: 0.8, vaneStartMPerS: 0.5 })).toBe(0.8);
  });

  it('end at the threshold itself', () => {
    expect(isCalm(0.49, 0.5)).toBe(true);
    expect(isCalm(0.5, 0.5)).toBe(false);
  });

  it('include standing cups even without a threshold', () => {
    expect(isCalm(0, 0)).toBe(true);
    expect(isCalm(0.1, 0)).toBe(false);
  });

  it('need a threshold that is a speed', () => {
    expect(() => calmThreshold({ cupsStartMPerS: -1, vaneStartMPerS: 0.5 })).toThrow('wind/bad-reading');
    expect(() => calmThreshold({ cupsStartMPerS: 0.3, vaneStartMPerS: NaN })).toThrow('wind/bad-reading');
  });
});
