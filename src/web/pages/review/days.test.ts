import { describe, expect, it } from 'vitest';
import { dayNumber, daysTouched, lastDays, placeOf, windowOf } from './days.ts';

const at = (text: string): number => Date.parse(text);

describe('days to review', () => {
  it('run from the first one’s beginning to the last one’s end', () => {
    expect(windowOf({ first: '2026-02-28', last: '2026-03-01' })).toEqual({
      sinceMs: at('2026-02-28T00:00:00Z'),
      untilMs: at('2026-03-02T00:00:00Z'),
    });
    expect(windowOf({ first: '2026-03-01', last: '2026-02-28' })).toBeNull();
    expect(windowOf({ first: '2026-02-30', last: '' })).toBeNull();
  });

  it('are those that a stretch touches; midnight belongs to the day before', () => {
    expect(daysTouched(at('2026-03-01T23:00:00Z'), at('2026-03-03T00:00:00Z'))).toEqual({
      first: '2026-03-01',
      last: '2026-03-02',
    });
    expect(lastDays(at('2026-03-08T00:00:00Z'), 7)).toEqual({ first: '2026-03-01', last: '2026-03-07' });
  });

  it('stand in weeks from Monday to Sunday', () => {
    const first = dayNumber(at('2026-03-04T00:00:00Z')); // a Wednesday
    expect(placeOf(first, first)).toEqual({ week: 0, row: 2 });
    expect(placeOf(first + 4, first)).toEqual({ week: 0, row: 6 });
    expect(placeOf(first + 5, first)).toEqual({ week: 1, row: 0 });
  });
});
