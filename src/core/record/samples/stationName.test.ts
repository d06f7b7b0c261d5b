import { describe, expect, it } from 'vitest';
import { stationName } from './stationName.ts';

describe('a station', () => {
  it.each(['jetty-north', 'Steg 2', 'Überfahrt', '北岸'])('may be called %s', (name) => {
    expect(stationName(name)).toBe(name);
  });

  it.each([
    "x'; DROP TABLE sample; --",
    '../../etc/passwd',
    'a/b',
    'a\\b',
    '<script>alert(1)</script>',
    '=HYPERLINK("http://x")',
    '+1',
    '-2+3',
    '@sum',
    'a\u0000b',
    'a\nb',
    '\u202eabc',
    'a..b',
    'name.',
    'name ',
    '',
    'x'.repeat(64),
    '$(reboot)',
    '%00',
  ])('may not be called %j', (name) => {
    expect(() => stationName(name)).toThrow('record/station-name');
  });
});
