import { describe, expect, it } from 'vitest';
import { crc16 } from './crc16.ts';
import { formatJsonLine, jsonCharsAtMost, parseJsonLine } from './jsonLine.ts';
import type { Line } from './line.ts';

const line: Line = {
  lineNumber: 7,
  sinceStartMs: 1750,
  counts: [93, 930, 512],
  word: '010',
  headingDeg: 202.5,
  halfWidthDeg: 5.63,
  flags: ['impossibleJump', 'interpolated'],
  average: { headingDeg: null, agreement: 0 },
  cups: { pulses: 41, edges: 380, gustPulses: null },
};

const bare =
  '{"vw":1,"lineNumber":7,"sinceStartMs":1750,"counts":[93,930,512],"word":"010","headingDeg":202.50,' +
  '"halfWidthDeg":5.63,"flags":"ji","average":{"headingDeg":null,"agreement":0.000},' +
  '"cups":{"pulses":41,"edges":380,"gustPulses":null}';

const checked = (text: string): string =>
  `${text},"check":"${crc16(text).toString(16).toUpperCase().padStart(4, '0')}"}`;

const refusal = (text: string): string => {
  const parsed = parseJsonLine(text);
  return parsed.ok ? 'read' : parsed.refusal.code;
};

describe('a JSON line', () => {
  it('is one object that any reader of JSON takes, with every field of the text line', () => {
    const text = formatJsonLine(line);
    expect(text).toBe(checked(bare));
    expect(JSON.parse(text)).toMatchObject({
      lineNumber: 7,
      counts: [93, 930, 512],
      headingDeg: 202.5,
      flags: 'ji',
    });
    expect(parseJsonLine(text)).toEqual({ ok: true, line });
    expect(parseJsonLine(`${text}\r`).ok).toBe(true);
  });

  it('says null, never 0, for what was not read', () => {
    const unread: Line = {
      ...line,
      headingDeg: null,
      halfWidthDeg: null,
      flags: ['illegalWord'],
      average: null,
      cups: null,
    };
    expect(formatJsonLine(unread)).toContain(
      '"headingDeg":null,"halfWidthDeg":null,"flags":"w","average":null,"cups":null',
    );
    expect(parseJsonLine(formatJsonLine(unread))).toEqual({ ok: true, line: unread });
  });

  it.each([
    ['record/line-foreign', 'vw1 1 2 3'],
    ['record/line-foreign', '[1]'],
    ['record/line-foreign', '{"lineNumber":1}'],
    ['record/line-long', `{${' '.repeat(2000)}}`],
    ['record/line-characters', checked(bare).replace('ji', 'j\u00ef')],
    ['record/line-version', checked(bare.replace('"vw":1', '"vw":2'))],
    ['record/line-check', checked(bare).replace('1750', '1751')],
    ['record/line-value', checked(bare.replace('202.50', '360.00'))],
    ['record/line-value', checked(bare.replace('"flags":"ji"', '"flags":"ij"'))],
    ['record/line-value', checked(bare.replace('[93,930,512]', '[93,930,-1]'))],
    ['record/line-value', checked(bare.replace('"word":"010",', ''))],
    ['record/line-value', checked(bare.replace('"pulses":41', '"pulses":1.5'))],
    ['record/line-contradicts', checked(bare.replace('"010"', '"01"'))],
    ['record/line-contradicts', checked(bare.replace('202.50', 'null'))],
    ['record/line-fields', checked(bare.replace('202.50', '202.5'))],
    ['record/line-fields', checked(bare.replace('"vw":1,', '"vw":1,"extra":0,'))],
    ['record/line-fields', checked(bare.replace(',"word"', ', "word"'))],
  ])('is refused with %s', (code, text) => {
    expect(refusal(text)).toBe(code);
  });

  it('is refused when any one character is missing', () => {
    const text = checked(bare);
    for (let at = 0; at < text.length; at++)
      expect(refusal(text.slice(0, at) + text.slice(at + 1))).not.toBe('read');
  });

  it('is never longer than the memory kept for it', () => {
    expect(formatJsonLine(line).length + 1).toBeLessThan(jsonCharsAtMost(3, 1023));
  });

  it('cannot be written for what the format cannot say', () => {
    expect(() => formatJsonLine({ ...line, lineNumber: -1 })).toThrow('record/line-value');
    expect(() => formatJsonLine({ ...line, word: '01' })).toThrow('record/line-contradicts');
  });
});
