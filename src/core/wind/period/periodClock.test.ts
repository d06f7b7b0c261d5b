import { describe, expect, it } from 'vitest';
import { expectedReadings, periodEnd, TEN_MINUTES_MS } from './periodClock.ts';

const at = (text: string): number => Date.parse(text);

describe('the end of a period', () => {
  it.each([
    ['2026-11-25T12:00:00.001Z', '2026-11-25T12:10:00Z'],
    ['2026-11-25T12:10:00Z', '2026-11-25T12:10:00Z'],
    ['2026-11-25T12:10:00.001Z', '2026-11-25T12:20:00Z'],
    ['2026-11-25T23:59:59Z', '2026-11-26T00:00:00Z'],
    ['1969-12-31T23:59:59Z', '1970-01-01T00:00:00Z'],
  ])('%s belongs to the one that ends at %s', (instant, end) => {
    expect(periodEnd(at(instant), TEN_MINUTES_MS)).toBe(at(end));
  });

  it('needs an instant and a length', () => {
    expect(() => periodEnd(NaN, 1000)).toThrow('wind/bad-reading');
    expect(() => periodEnd(0, 0)).toThrow('wind/bad-reading');
  });
});

describe('what the clock expects', () => {
  it('is 600 samples in ten minutes at 1 Hz', () => {
    expect(expectedReadings(TEN_MINUTES_MS, 1000)).toBe(600);
  });

  it('needs an interval', () => {
    expect(() => expectedReadings(TEN_MINUTES_MS, 0)).toThrow('wind/bad-reading');
  });
});
