import { describe, expect, it } from 'vitest';
import { equalWeights, StratumClock } from './stratum.ts';

const at = (text: string): number => Date.parse(text);

describe('what shall count the same', () => {
  it.each([
    ['reading', '2026-11-25T12:10:00Z', 1, 0],
    ['hour', '2026-11-25T12:10:00Z', 24, 12],
    ['season', '2026-11-25T12:10:00Z', 4, 3],
    ['season', '2026-12-01T00:00:00Z', 4, 0],
    ['season', '2026-02-28T23:59:59Z', 4, 0],
    ['season', '2026-03-01T00:00:00Z', 4, 1],
    ['month', '2026-11-25T12:10:00Z', 12, 10],
    ['hour-of-season', '2026-11-25T12:10:00Z', 96, 3 * 24 + 12],
    ['hour-of-month', '2024-02-29T23:50:00Z', 288, 24 + 23],
  ] as const)('by %s, %s', (weight, instant, count, index) => {
    const clock = new StratumClock(weight, 0);
    expect(clock.count).toBe(count);
    expect(clock.indexOf(at(instant))).toBe(index);
  });

  it('follows the hours of the place, also across midnight and the month', () => {
    const clock = new StratumClock('hour-of-month', 330); // 5 h 30 min east
    expect(clock.indexOf(at('2026-01-31T18:29:59Z'))).toBe(23);
    expect(clock.indexOf(at('2026-01-31T18:30:00Z'))).toBe(24);
    expect(clock.indexOf(at('2026-01-31T18:29:59Z'))).toBe(23); // and back again
  });

  it('names each choice once', () => {
    expect(new Set(equalWeights).size).toBe(6);
  });

  it('is one of the choices', () => {
    expect(() => new StratumClock('week' as 'hour', 0)).toThrow('wind/bad-setting');
  });

  it('needs an offset', () => {
    expect(() => new StratumClock('hour', NaN)).toThrow('wind/bad-reading');
  });
});
