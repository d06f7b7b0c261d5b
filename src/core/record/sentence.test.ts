import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { parseSentence } from './parseSentence.ts';
import { formatSentence, sentenceCheck, type WindSentence } from './sentence.ts';

const read = (text: string): WindSentence | string => {
  const parsed = parseSentence(text);
  return parsed.ok ? parsed.sentence : parsed.refusal.code;
};
const checked = (content: string): string => `$${content}*${sentenceCheck(content)}`;

// Check values worked out by hand, byte by byte, from the rule of the standard.
const byHand = [
  ['$WIMWV,225.0,R,5.2,M,A*22', 'mwv', 225, 5.2, 'relative', true],
  ['$WIMWV,281.3,R,4.7,M,A*2B', 'mwv', 281.3, 4.7, 'relative', true],
  ['$WIMWV,,R,,M,V*37', 'mwv', null, null, 'relative', false],
  ['$WIMWD,225.0,T,,M,10.1,N,5.2,M*46', 'mwd', 225, 5.2, null, true],
] as const;

describe('a wind sentence', () => {
  it.each(byHand)('%s is read and written', (text, kind, directionDeg, speedMPerS, reference, isValid) => {
    const sentence = { kind, directionDeg, speedMPerS, reference, isValid };
    expect(read(text)).toEqual(sentence);
    expect(read(`${text}\r`)).toEqual(sentence);
    expect(formatSentence(sentence)).toBe(text);
  });

  it('comes back to the tenth it is written with, and fits the 82 characters of the standard', () => {
    fc.assert(
      fc.property(
        fc.constantFrom('mwd' as const, 'mwv' as const),
        fc.option(fc.integer({ min: 0, max: 3599 })),
        fc.option(fc.integer({ min: 0, max: 999 })),
        (kind, direction, speed) => {
          const sentence: WindSentence = {
            kind,
            directionDeg: direction === null ? null : direction / 10,
            speedMPerS: speed === null ? null : speed / 10,
            reference: kind === 'mwv' ? 'theoretical' : null,
            isValid: direction !== null,
          };
          const text = formatSentence(sentence);
          expect(text.length + 2).toBeLessThanOrEqual(82);
          expect(read(text)).toEqual(sentence);
        },
      ),
      { seed: 20240611 },
    );
  });

  it('never says 360, and leaves blank what it does not know', () => {
    const nearNorth: WindSentence = {
      kind: 'mwd',
      directionDeg: 359.97,
      speedMPerS: null,
      reference: null,
      isValid: true,
    };
    expect(formatSentence(nearNorth)).toMatch(/^\$WIMWD,0\.0,T,,M,,N,,M\*/);
    expect(() => formatSentence({ ...nearNorth, directionDeg: Number.NaN })).toThrow(RangeError);
  });

  it('is read from other senders, in any unit of the standard', () => {
    expect(read(checked('IIMWV,010,T,36.0,K,A'))).toMatchObject({ directionDeg: 10, speedMPerS: 10 });
    expect(read(checked('IIMWV,360.0,T,1.0,N,A'))).toMatchObject({
      directionDeg: 0,
      speedMPerS: 1852 / 3600,
    });
    expect(read(checked('IIMWV,1,R,10,S,A'))).toMatchObject({ speedMPerS: 4.4704 });
    expect(read(checked('WIMWD,1.5,T,2.5,M,1.0,N,,M'))).toMatchObject({
      directionDeg: 1.5,
      speedMPerS: 1852 / 3600,
    });
  });

  it.each([
    ['record/sentence-foreign', 'vw1 1'],
    ['record/sentence-foreign', '$WIVWR,1,2*00'],
    ['record/sentence-foreign', `$WIMWV,${'1'.repeat(90)}`],
    ['record/sentence-foreign', '$WIMWV,\u0001,R,5.2,M,A*22'],
    ['record/sentence-check', '$WIMWV,225.0,R,5.2,M,A*23'],
    ['record/sentence-check', '$WIMWV,225.0,R,5.2,M,A'],
    ['record/sentence-check', '$WIMWV,225.0,R,5.2,M,A*2b'],
    ['record/sentence-value', checked('WIMWV,361,R,5.2,M,A')],
    ['record/sentence-value', checked('WIMWV,225.0,X,5.2,M,A')],
    ['record/sentence-value', checked('WIMWV,225.0,R,5.2,Q,A')],
    ['record/sentence-value', checked('WIMWV,225.0,R,-5,M,A')],
    ['record/sentence-value', checked('WIMWV,225.0,R,5.2,M,B')],
    ['record/sentence-value', checked('WIMWV,225.0,R,5.2,M')],
    ['record/sentence-value', checked('WIMWD,225.0,M,,M,10.1,N,5.2,M')],
    ['record/sentence-value', checked('WIMWD,225.0,T,x,M,10.1,N,5.2,M')],
    ['record/sentence-value', checked('WIMWD,225.0,T,,M,10.1,N,6.2,M')],
  ])('is refused with %s: %s', (code, text) => {
    expect(read(text)).toBe(code);
  });

  it('never throws, whatever the text', () => {
    fc.assert(
      fc.property(fc.string(), (text) => {
        expect(typeof read(text)).toBe('string');
        expect(read(checked(`WIMWV,${text}`))).toBeDefined();
      }),
      { seed: 20240611 },
    );
  });
});
