import { describe, expect, it } from 'vitest';
import { compassHeading, compassLanguage } from './compassName.ts';

describe('names of compass points', () => {
  it('have the letter O for east in German and for west in French, Spanish and Italian', () => {
    expect([
      compassHeading('SO', 'german'),
      compassHeading('SO', 'romance'),
      compassHeading('so', 'english'),
    ]).toEqual([135, 225, null]);
    expect([
      compassHeading('NNW', 'english'),
      compassHeading('NNO', 'german'),
      compassHeading('ONO', 'romance'),
    ]).toEqual([337.5, 22.5, 292.5]);
  });

  it('tell their language by the other letters', () => {
    expect(compassLanguage(['N', 'O', 'WSW'])).toBe('german');
    expect(compassLanguage(['N', 'O', 'ESE'])).toBe('romance');
    expect(compassLanguage(['N', 'SO', 'NO'])).toBe('open');
    expect(compassLanguage(['N', 'E', 'SW'])).toBe('english');
    expect(compassLanguage(['N', 'calm'])).toBeNull();
  });
});
