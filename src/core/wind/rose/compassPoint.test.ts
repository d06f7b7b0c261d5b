import { describe, expect, it } from 'vitest';
import { compassPoint, compassPoints } from './compassPoint.ts';

describe('compass points', () => {
  it('of sixteen, in order', () => {
    const names = 'N NNE NE ENE E ESE SE SSE S SSW SW WSW W WNW NW NNW';
    expect(compassPoints(16).join(' ')).toBe(names);
  });

  it('of thirty-two, beginning N NbE NNE NEbN and ending NbW', () => {
    const names = compassPoints(32);
    expect(names.slice(0, 9).join(' ')).toBe('N NbE NNE NEbN NE NEbE ENE EbN E');
    expect(names.at(-1)).toBe('NbW');
    expect(new Set(names).size).toBe(32);
  });

  it('of four and eight', () => {
    expect(compassPoints(4)).toEqual(['N', 'E', 'S', 'W']);
    expect(compassPoints(8).join(' ')).toBe('N NE E SE S SW W NW');
  });

  it.each([
    [0, 'N'],
    [11.24, 'N'],
    [11.25, 'NNE'],
    [348.74, 'NNW'],
    [348.75, 'N'],
    [-11.25, 'N'],
    [720, 'N'],
    [202.5, 'SSW'],
  ])('%f° is %s', (heading, name) => {
    expect(compassPoint(heading)).toBe(name);
  });

  it('have each point in the middle of its sector', () => {
    for (const count of [4, 8, 16, 32] as const) {
      const names = compassPoints(count);
      names.forEach((name, i) => expect(compassPoint((i * 360) / count, count)).toBe(name));
    }
  });

  it('are 4, 8, 16 or 32, and of angles', () => {
    expect(() => compassPoints(12 as 16)).toThrow('wind/bad-setting');
    expect(() => compassPoint(NaN)).toThrow('wind/bad-reading');
  });
});
