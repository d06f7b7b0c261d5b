import { describe, expect, it } from 'vitest';
import { seededRandom } from '../../units/index.ts';
import { gumbelFit, gumbelReturn } from './gumbel.ts';

describe('yearly maxima', () => {
  it('give the same distribution shifted and stretched', () => {
    const maxima = [21, 24, 20, 27, 22];
    const fit = gumbelFit(maxima);
    const moved = gumbelFit(maxima.map((most) => 100 + 3 * most));
    expect(moved.locationMPerS).toBeCloseTo(100 + 3 * fit.locationMPerS, 9);
    expect(moved.scaleMPerS).toBeCloseTo(3 * fit.scaleMPerS, 9);
  });

  it('scatter as the stated error says', () => {
    const random = seededRandom(5);
    const levels = Array.from({ length: 400 }, () => {
      const maxima = Array.from({ length: 40 }, () => 20 - 2 * Math.log(-Math.log(random.uniform())));
      return gumbelReturn(gumbelFit(maxima), 50, 40).speedMPerS;
    });
    const mean = levels.reduce((sum, level) => sum + level, 0) / levels.length;
    const scatter = Math.sqrt(levels.reduce((sum, level) => sum + (level - mean) ** 2, 0) / levels.length);
    const stated = gumbelReturn({ locationMPerS: 20, scaleMPerS: 2 }, 50, 40).standardErrorMPerS;
    expect(Math.abs(scatter / stated - 1)).toBeLessThan(0.12); // 400 draws know a deviation to 3.5 %
  });

  it('need two different years', () => {
    expect(() => gumbelFit([20])).toThrow('wind/too-few-readings');
    expect(() => gumbelFit([20, 20])).toThrow('wind/no-variation');
    expect(() => gumbelFit([20, NaN])).toThrow('wind/bad-reading');
    const gumbel = { locationMPerS: 20, scaleMPerS: 2 };
    expect(() => gumbelReturn(gumbel, 1, 20)).toThrow('wind/bad-reading');
    expect(() => gumbelReturn(gumbel, 10, NaN)).toThrow('wind/bad-reading');
    expect(() => gumbelReturn({ ...gumbel, scaleMPerS: 0 }, 10, 20)).toThrow('wind/bad-reading');
  });
});
