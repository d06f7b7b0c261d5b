import { describe, expect, it } from 'vitest';
import { seededRandom } from '../../units/index.ts';
import { ArrivalClock, isSetClock, isSetDate } from './arrivalClock.ts';

describe('times of lines as they come', () => {
  it.each([
    ['right', 1],
    ['0.4 % slow', 0.996],
    ['0.4 % fast', 1.004],
  ])('lie within what they say, with a counter that is %s and lines that wait', (_, rate) => {
    const random = seededRandom(5);
    const clock = new ArrivalClock();
    const start = 1_700_000_000_000;
    let last = -Infinity;
    for (let i = 0; i < 20_000; i++) {
      const trueMs = start + 1000 * i;
      // Mostly a few ms on the way, now and then half a second in a full buffer.
      const delay = random.uniform() < 0.02 ? 500 * random.uniform() : 8 * random.uniform();
      const arrived = Math.max(Math.ceil(trueMs + delay), last);
      last = arrived;
      const { atMs, withinMs } = clock.take(1000 * i * rate, arrived);
      expect(Math.abs(atMs - trueMs)).toBeLessThanOrEqual(withinMs);
      if (i > 100 && rate === 1) expect(Math.abs(atMs - trueMs)).toBeLessThan(20);
    }
  });

  it('are those of sending when lines are held back for an hour and then come all at once', () => {
    const clock = new ArrivalClock();
    const start = 1_700_000_000_000;
    for (let i = 0; i < 60; i++) clock.take(1000 * i, start + 1000 * i + 5);
    for (let i = 60; i < 3660; i++) {
      const { atMs, withinMs, hostStepped } = clock.take(1000 * i, start + 3_660_000 + 0.1 * (i - 60));
      expect(hostStepped).toBe(false);
      expect(Math.abs(atMs - (start + 1000 * i))).toBeLessThanOrEqual(withinMs);
      expect(withinMs).toBeLessThan(20_000);
    }
  });

  it.each([3_600_000, -3_600_000])('follow the clock of this machine when it is set by %d ms', (byMs) => {
    const clock = new ArrivalClock();
    const start = 1_700_000_000_000;
    let steps = 0;
    for (let i = 0; i < 200; i++) {
      const arrived = start + 1000 * i + (i < 100 ? 0 : byMs);
      const { atMs, hostStepped } = clock.take(1000 * i, arrived);
      steps += Number(hostStepped);
      if (i > 110) expect(atMs).toBe(arrived);
    }
    expect(steps).toBe(1);
  });

  it('that were written may be of any year but those in which unset clocks begin', () => {
    const days = [
      '1970-01-01',
      '1980-01-05',
      '2000-01-01',
      '2165-01-01',
      '1961-01-01',
      '1995-03-17',
      '2000-05-01',
    ];
    expect(days.map((day) => isSetDate(Date.parse(day)))).toEqual([
      false,
      false,
      false,
      false,
      true,
      true,
      true,
    ]);
  });

  it('are not taken from a clock in 1970, 2000 or 2165', () => {
    expect(
      ['1970-01-01', '2000-01-01', '2165-01-01', '2026-11-25'].map((day) => isSetClock(Date.parse(day))),
    ).toEqual([false, false, false, true]);
  });
});
