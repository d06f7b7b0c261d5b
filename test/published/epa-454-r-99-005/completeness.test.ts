import { describe, expect, it } from 'vitest';
import { completeness, yearIsComplete } from '../../../src/core/wind/index.ts';

const full = { expected: 100, speed: 95, heading: 94, both: 90 };

describe('completeness (5.3.2)', () => {
  it('is valid over expected by the clock, for each and for both', () => {
    expect(completeness(full)).toEqual({ speed: 0.95, heading: 0.94, both: 0.9 });
  });

  it('asks 90 % of each of four quarters', () => {
    expect(yearIsComplete([full, full, full, full]).complete).toBe(true);
    expect(yearIsComplete([full, full, full]).complete).toBe(false);
  });

  it('is not reached when one quarter falls short jointly, although each variable reaches it', () => {
    const apart = { expected: 100, speed: 95, heading: 95, both: 89 };
    expect(yearIsComplete([full, full, apart, full]).complete).toBe(false);
  });

  it('is not reached by 75 %, which is another rule', () => {
    const three = { expected: 100, speed: 75, heading: 75, both: 75 };
    expect(yearIsComplete([three, three, three, three]).complete).toBe(false);
  });

  it('shows when more came than the clock expects', () => {
    expect(completeness({ ...full, speed: 102 }).speed).toBe(1.02);
  });

  it('needs something to expect, and counts', () => {
    expect(() => completeness({ ...full, expected: 0 })).toThrow('wind/bad-reading');
    expect(() => completeness({ ...full, both: NaN })).toThrow('wind/bad-reading');
  });
});
