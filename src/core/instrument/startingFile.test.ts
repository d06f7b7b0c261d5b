import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { buildCode } from '../codes/index.ts';
import { VanewrightError } from '../error/index.ts';
import { readInstrument, startingFile } from './index.ts';

describe('the file a maker begins from', () => {
  it('describes a printed vane of 32 positions on five tracks', () => {
    const { instrument } = readInstrument(startingFile('my vane'), 'instrument.yaml');
    expect(instrument).toMatchObject({
      name: 'my vane',
      need: { positions: 32, accuracyDeg: 10 },
      disc: {
        code: 'reflected-gray',
        diameterMm: 90,
        bore: { shape: 'd', diameterMm: 5, acrossFlatMm: 4.5 },
        process: { kind: 'fdm' },
      },
      head: { detector: { kind: 'photoresistor' }, aperture: { shape: 'slit', widthMm: 1.2, lengthMm: 2 } },
    });
    expect(buildCode(instrument.disc.code, instrument.need.positions).tracks).toHaveLength(5);
  });

  it('begins with the version, and shows the true defaults of the process behind comment signs', () => {
    const text = startingFile('my vane');
    expect(text.startsWith('vanewright: 1\n')).toBe(true);
    const uncommented = text.replace(/^ {4}# (\w+: -?[\d.]+)$/gm, '    $1');
    expect(uncommented.match(/^ {4}\w+Mm: /gm)).toHaveLength(6);
    expect(readInstrument(uncommented, 'a').instrument).toEqual(readInstrument(text, 'a').instrument);
  });

  it('reads with the cups that its comment shows', () => {
    const withCups = startingFile('my vane').replace(/^# (cups: \{.+\})\ncups: null$/m, '$1');
    expect(readInstrument(withCups, 'a').instrument.cups).toMatchObject({
      pulsesPerTurn: 1,
      pin: 'D2',
      quietUs: 1500,
    });
  });

  it('holds any name that fits on a line, quotes, colons and comment signs included', () => {
    const sign = fc.oneof(
      fc.constantFrom('"', "'", ': ', ' #', '\\', '*/', '&', '!', '%', '{', '-', '風', '🌬', '</script>'),
      fc.string({ unit: 'grapheme', maxLength: 3 }),
    );
    const name = fc
      .array(sign, { minLength: 1, maxLength: 12 })
      .map((signs) => signs.join(''))
      .filter((text) => text.length > 0 && text.length <= 80);
    fc.assert(
      fc.property(name, (text) => {
        expect(readInstrument(startingFile(text), 'a').instrument.name).toBe(text);
      }),
      { seed: 20240614, numRuns: 200 },
    );
  });

  it.each([
    ['', 'instrument/wrong-length'],
    ['a'.repeat(81), 'instrument/wrong-length'],
    ['two\nlines', 'instrument/bad-text'],
    ['\u202egnp.enav', 'instrument/bad-text'],
    ['\ud800', 'instrument/bad-text'],
    ['   ', 'instrument/bad-text'],
    ['\u00a0\u2003', 'instrument/bad-text'],
    ['va\u200bne', 'instrument/bad-text'],
    ['va\u200dne', 'instrument/bad-text'],
    ['\u2060', 'instrument/bad-text'],
    ['\u3164', 'instrument/bad-text'],
    ['vane\u{e0041}', 'instrument/bad-text'],
  ])('is not made for the name %j', (name, code) => {
    expect(() => startingFile(name)).toThrow(VanewrightError);
    expect(() => startingFile(name)).toThrow(code);
  });
});
