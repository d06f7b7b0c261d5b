import { describe, expect, it } from 'vitest';
import { CoverageCalendar } from './coverageCalendar.ts';

const HOUR = 3_600_000;
const DAY = 24 * HOUR;
const both = { speed: true, heading: true };

describe('the calendar of coverage', () => {
  it('counts against the clock, day by day, days without samples too', () => {
    const calendar = new CoverageCalendar(HOUR);
    for (let hour = 1; hour <= 24; hour++) calendar.add(hour * HOUR, both);
    calendar.add(2 * DAY + HOUR, { speed: true, heading: false });
    expect(calendar.days(0, 3 * DAY)).toEqual([
      { startMs: 0, expected: 24, speed: 24, heading: 24, both: 24 },
      { startMs: DAY, expected: 24, speed: 0, heading: 0, both: 0 },
      { startMs: 2 * DAY, expected: 24, speed: 1, heading: 0, both: 0 },
    ]);
    expect(calendar.span(0, 3 * DAY)).toEqual({ expected: 72, speed: 25, heading: 24, both: 24 });
  });

  it('gives midnight to the day that ends', () => {
    const calendar = new CoverageCalendar(HOUR);
    calendar.add(DAY, both);
    expect(calendar.days(0, 2 * DAY).map((day) => day.both)).toEqual([1, 0]);
  });

  it('is the same of two calendars joined', () => {
    const [a, b] = [new CoverageCalendar(HOUR), new CoverageCalendar(HOUR)];
    a.add(HOUR, both);
    b.add(2 * HOUR, { speed: false, heading: true });
    b.add(DAY + HOUR, both);
    a.merge(b);
    expect(a.span(0, 2 * DAY)).toEqual({ expected: 48, speed: 2, heading: 3, both: 2 });
    a.add(3 * HOUR, both);
    expect(a.span(0, DAY)).toEqual({ expected: 24, speed: 2, heading: 3, both: 2 });
  });

  it('joins only calendars of one interval', () => {
    expect(() => new CoverageCalendar(HOUR).merge(new CoverageCalendar(1000))).toThrow(
      'wind/different-layout',
    );
  });

  it('needs instants', () => {
    expect(() => new CoverageCalendar(0)).toThrow('wind/bad-reading');
    expect(() => new CoverageCalendar(HOUR).add(NaN, both)).toThrow('wind/bad-reading');
    expect(() => new CoverageCalendar(HOUR).days(0, Infinity)).toThrow('wind/bad-reading');
  });
});
