import { describe, expect, it } from 'vitest';
import { orderTold, timeOfDay, writtenTime } from './dateText.ts';

describe('dates as people and programs write them', () => {
  // The first two instants are epoch checks of ISO 8601 and POSIX time: 1709250600 s and 1795608000 s.
  it.each([
    ['2024-02-29T23:50:00Z', 1_709_250_600_000],
    ['2026-11-25 12:00', 1_795_608_000_000],
    ['2026-11-25T13:00:00+01:00', 1_795_608_000_000],
    ['25.11.2026 12:00:00', 1_795_608_000_000],
    ['25/11/2026 12:00', 1_795_608_000_000],
    ['2026/11/25 12:00:00,250', 1_795_608_000_250],
    ['25.11.26 12:00', 1_795_608_000_000],
    ['25/11/2026 12:00 PM', 1_795_608_000_000],
    ['2026-11-25', 1_795_564_800_000],
    ['2026-11-24T24:00', 1_795_564_800_000],
  ])('%s is read', (text, atMs) => {
    expect(writtenTime(text, 'day-first')?.localMs).toBe(atMs);
  });

  it('put the month first where that is told', () => {
    expect(writtenTime('11/25/2026 12:00 PM', 'month-first')?.localMs).toBe(1_795_608_000_000);
  });

  it.each([
    '31.02.2026',
    '2026-13-01',
    '25:61',
    '3.25',
    '2026-11-25T25:00',
    '',
    '1,5',
    '0/0/0',
    "'; DROP TABLE",
  ])('%s is none', (text) => {
    expect(writtenTime(text, 'day-first')).toBeNull();
  });

  it('tell their order by a day above 12, or not at all', () => {
    expect(['13/04/2024', '04/13/2024', '03/04/2024', '2024-04-03', '12'].map(orderTold)).toEqual([
      'day-first',
      'month-first',
      'open',
      'year-first',
      null,
    ]);
  });

  it('may be a time of day alone', () => {
    expect(['21:00:48.335', '9:00 PM', '12:30 am', '24:30'].map(timeOfDay)).toEqual([
      75_648_335,
      75_600_000,
      1_800_000,
      null,
    ]);
  });
});
