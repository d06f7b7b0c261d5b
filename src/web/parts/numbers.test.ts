import { describe, expect, it } from 'vitest';
import { readNumber } from './numbers.ts';

describe('a number that someone typed', () => {
  it.each([
    ['12', 12],
    [' 0.5 ', 0.5],
    ['0,5', 0.5],
    ['\u22123,25', -3.25],
    ['.5', 0.5],
    ['1e-3', 0.001],
  ])('is read with a point or a comma: %s', (text, value) => expect(readNumber(text)).toBe(value));

  it.each(['', '-', '12 mm', '1,000,000', '0x10', 'NaN', 'Infinity', '1..2', '--1'])('is none: %s', (text) =>
    expect(readNumber(text)).toBeNull(),
  );
});
