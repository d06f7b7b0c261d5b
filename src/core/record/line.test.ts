import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { crc16 } from './crc16.ts';
import { formatLine } from './formatLine.ts';
import { COUNTER_MOST, GUST_MOST, lineCharsAtMost, lineFlags, type Line, type LineFlag } from './line.ts';
import { parseLine } from './parseLine.ts';
import { refusals } from './refusals.ts';

/** A body with its right check value, so that a test can spoil one field only. */
const checked = (body: string): string =>
  `${body} ${crc16(body).toString(16).toUpperCase().padStart(4, '0')}`;

const refusal = (text: string): string => {
  const parsed = parseLine(text);
  return parsed.ok ? 'read' : `${parsed.refusal.code} ${parsed.refusal.where}`;
};

const GOOD = checked('vw1 7 1750 93,930,512 010 20250 563 jp 20100 998 41 380 7');

/** Any characters, lone halves of pairs too, and often those that lines are made of. */
const anyText = fc
  .array(
    fc.oneof(
      fc.integer({ min: 0, max: 0x10ffff }),
      fc.constantFrom(...Array.from('0129 ,?-jpw', (c) => c.charCodeAt(0))),
    ),
  )
  .map((points) => String.fromCodePoint(...points));

/** As they are sent. */
const inOrder = (flags: readonly LineFlag[]): LineFlag[] =>
  (Object.keys(lineFlags) as LineFlag[]).filter((flag) => flags.includes(flag));

const counter = fc.oneof(fc.constantFrom(0, 1, COUNTER_MOST), fc.integer({ min: 0, max: COUNTER_MOST }));
const lines: fc.Arbitrary<Line> = fc
  .record({
    lineNumber: counter,
    sinceStartMs: counter,
    counts: fc.array(fc.integer({ min: 0, max: 65_535 }), { minLength: 1, maxLength: 16 }),
    digits: fc.array(fc.constantFrom('0', '1', '2'), { minLength: 16, maxLength: 16 }),
    hundredths: fc.option(fc.integer({ min: 0, max: 35_999 })),
    halfWidth: fc.integer({ min: 0, max: 18_000 }),
    noticed: fc.subarray<LineFlag>([
      'impossibleJump',
      'illegalBefore',
      'stuckChannel',
      'allDark',
      'turnRecording',
    ]),
    average: fc.option(
      fc
        .record({
          mean: fc.option(fc.integer({ min: 0, max: 35_999 })),
          agreement: fc.integer({ min: 0, max: 1000 }),
        })
        .map(({ mean, agreement }) => ({
          headingDeg: mean === null ? null : mean / 100,
          agreement: mean === null && agreement === 0 ? null : agreement / 1000,
        })),
    ),
    cups: fc.option(
      fc.record({
        pulses: counter,
        edges: counter,
        gustPulses: fc.option(fc.integer({ min: 0, max: GUST_MOST })),
      }),
    ),
  })
  .map(({ digits, hundredths, halfWidth, noticed, ...rest }) => ({
    ...rest,
    halfWidthDeg: hundredths === null ? null : halfWidth / 100,
    word: digits.slice(0, rest.counts.length).join(''),
    headingDeg: hundredths === null ? null : hundredths / 100,
    flags: inOrder(hundredths === null ? [...noticed, 'illegalWord' as const] : noticed),
  }));

describe('a line', () => {
  it('reads as docs/line-format.md says', () => {
    expect(parseLine(GOOD)).toEqual({
      ok: true,
      line: {
        lineNumber: 7,
        sinceStartMs: 1750,
        counts: [93, 930, 512],
        word: '010',
        headingDeg: 202.5,
        halfWidthDeg: 5.63,
        flags: ['impossibleJump', 'illegalBefore'],
        average: { headingDeg: 201, agreement: 0.998 },
        cups: { pulses: 41, edges: 380, gustPulses: 7 },
      },
    });
  });

  it('comes back as it was written, with or without a carriage return', () => {
    fc.assert(
      fc.property(lines, (line) => {
        const text = formatLine(line);
        expect(parseLine(text)).toEqual({ ok: true, line });
        expect(parseLine(`${text}\r`)).toEqual({ ok: true, line });
        expect(text.length + 1).toBeLessThanOrEqual(lineCharsAtMost(line.counts.length));
      }),
      { seed: 20240611 },
    );
  });

  it('is refused when any one character of it is another', () => {
    const text = formatLine({
      lineNumber: 12,
      sinceStartMs: 3000,
      counts: [93, 930],
      word: '01',
      headingDeg: 0,
      halfWidthDeg: 5.63,
      flags: [],
      average: null,
      cups: null,
    });
    for (let at = 0; at < text.length; at++) {
      for (let code = 0; code < 256; code++) {
        if (code === text.charCodeAt(at)) continue;
        const spoilt = text.slice(0, at) + String.fromCharCode(code) + text.slice(at + 1);
        expect(parseLine(spoilt).ok).toBe(false);
      }
    }
  });

  it('is refused when the beginning or the end is missing', () => {
    for (let cut = 1; cut < GOOD.length; cut++) {
      expect(parseLine(GOOD.slice(cut)).ok).toBe(false);
      expect(parseLine(GOOD.slice(0, -cut)).ok).toBe(false);
    }
  });

  it('never throws, whatever the text', () => {
    fc.assert(
      fc.property(anyText, (text) => {
        expect(parseLine(text).ok).toBe(false);
        expect(parseLine(checked(`vw1 ${text}`)).ok).toBe(false);
        expect(parseLine(checked(`vw1 0 0 1 0 ${text} 563 - - - - - -`))).toBeDefined();
      }),
      { seed: 20240611 },
    );
  });
});

describe('a refusal names the reason', () => {
  it.each([
    ['record/line-long line', 'x'.repeat(1000)],
    ['record/line-long line', `${GOOD} `.padEnd(2_000_000)],
    ['record/line-characters line', GOOD.replace('512', '5\u00ff2')],
    ['record/line-characters line', `${GOOD}\n`],
    ['record/line-characters line', `\r${GOOD}`],
    ['record/line-foreign tag', ''],
    ['record/line-foreign tag', 'Vane ready'],
    ['record/line-foreign tag', ` ${GOOD}`],
    ['record/line-version tag', checked('vw2 7 1750 93 0 20250 563 - - - - - -')],
    ['record/line-fields line', 'vw1'],
    ['record/line-fields line', `${GOOD} `],
    ['record/line-fields line', GOOD.replace(' 41', '')],
    ['record/line-fields line', GOOD.replace(' 41', '  41')],
    ['record/line-check check value', GOOD.replace('1750', '1751')],
    ['record/line-check check value', GOOD.slice(0, -4) + GOOD.slice(-4).toLowerCase().replace(/\d/g, 'a')],
    ['record/line-value lineNumber', checked('vw1 07 1750 93 0 20250 563 - - - - - -')],
    ['record/line-value lineNumber', checked('vw1 4294967296 1750 93 0 20250 563 - - - - - -')],
    ['record/line-value sinceStartMs', checked('vw1 7 -1 93 0 20250 563 - - - - - -')],
    ['record/line-value sinceStartMs', checked('vw1 7 1e3 93 0 20250 563 - - - - - -')],
    ['record/line-value counts', checked('vw1 7 1750 93, 01 20250 563 - - - - - -')],
    ['record/line-value counts', checked('vw1 7 1750 93,65536 01 20250 563 - - - - - -')],
    [
      'record/line-value counts',
      checked(`vw1 7 1750 ${'1,'.repeat(64)}1 ${'0'.repeat(65)} 20250 563 - - - - - -`),
    ],
    ['record/line-value word', checked('vw1 7 1750 93 3 20250 563 - - - - - -')],
    ['record/line-value heading', checked('vw1 7 1750 93 0 36000 563 - - - - - -')],
    ['record/line-value heading', checked('vw1 7 1750 93 0 202.5 563 - - - - - -')],
    ['record/line-value flags', checked('vw1 7 1750 93 0 20250 563 pj - - - - -')],
    ['record/line-value flags', checked('vw1 7 1750 93 0 20250 563 jj - - - - -')],
    ['record/line-value flags', checked('vw1 7 1750 93 0 20250 563 x - - - - -')],
    ['record/line-value pulses', checked('vw1 7 1750 93 0 20250 563 - - - - 5 -')],
    ['record/line-value edges', checked('vw1 7 1750 93 0 20250 563 - - - 5 - -')],
    ['record/line-contradicts word', checked('vw1 7 1750 93,94 0 20250 563 - - - - - -')],
    ['record/line-contradicts heading', checked('vw1 7 1750 93 0 ? ? - - - - - -')],
    ['record/line-value halfWidth', checked('vw1 7 1750 93 0 20250 18001 - - - - - -')],
    ['record/line-value mean', checked('vw1 7 1750 93 0 20250 563 - 36000 998 - - -')],
    ['record/line-value mean', checked('vw1 7 1750 93 0 20250 563 - - 998 - - -')],
    ['record/line-value agreement', checked('vw1 7 1750 93 0 20250 563 - 100 1001 - - -')],
    ['record/line-value agreement', checked('vw1 7 1750 93 0 20250 563 - 100 ? - - -')],
    ['record/line-value pulses', checked('vw1 7 1750 93 0 20250 563 - - - - - 5')],
    ['record/line-value gust', checked('vw1 7 1750 93 0 20250 563 - - - 5 6 65536')],
    ['record/line-contradicts halfWidth', checked('vw1 7 1750 93 0 20250 ? - - - - - -')],
    ['record/line-contradicts flags', checked('vw1 7 1750 93 0 ? ? wi - - - - -')],
    ['record/line-contradicts heading', checked('vw1 7 1750 93 0 0 563 w - - - - -')],
  ])('%s', (expected, text) => {
    expect(refusal(text)).toBe(expected);
  });

  it('shows what was there in print, and not all of a long text', () => {
    const parsed = parseLine(`vw1 \u0007\u202e${'y'.repeat(100)}`);
    expect(parsed.ok ? '' : parsed.refusal.got).toBe(`vw1 \ufffd\ufffd${'y'.repeat(34)}… (106 characters)`);
  });

  it('for each of its codes somewhere above', () => {
    expect(Object.keys(refusals)).toHaveLength(8);
  });
});

describe('formatLine', () => {
  const north: Line = {
    lineNumber: 0,
    sinceStartMs: 0,
    counts: [1],
    word: '1',
    headingDeg: 0,
    halfWidthDeg: 5.63,
    flags: [],
    average: null,
    cups: null,
  };

  it('says ? and never 0 when the heading was not read', () => {
    expect(formatLine({ ...north, headingDeg: null, halfWidthDeg: null, flags: ['illegalWord'] })).toBe(
      checked('vw1 0 0 1 1 ? ? w - - - - -'),
    );
    expect(formatLine(north)).toBe(checked('vw1 0 0 1 1 0 563 - - - - - -'));
  });

  it('says 0 for a heading that rounds to a full turn', () => {
    expect(formatLine({ ...north, headingDeg: 359.996 })).toBe(checked('vw1 0 0 1 1 0 563 - - - - - -'));
  });

  it.each<[string, Partial<Line>]>([
    ['record/line-value', { counts: [-1] }],
    ['record/line-value', { counts: [Number.NaN] }],
    ['record/line-value', { headingDeg: Number.NaN }],
    ['record/line-value', { lineNumber: 1.5 }],
    ['record/line-contradicts', { headingDeg: null }],
    ['record/line-contradicts', { word: '11' }],
    ['record/line-fields', { word: '1 1' }],
  ])('throws %s for what the format cannot say', (code, wrong) => {
    expect(() => formatLine({ ...north, ...wrong })).toThrow(code);
  });
});

describe('lineCharsAtMost', () => {
  it('is the length of a line with every field at its longest', () => {
    const longest = (channels: number, counts: number): Line => ({
      lineNumber: COUNTER_MOST,
      sinceStartMs: COUNTER_MOST,
      counts: new Array<number>(channels).fill(counts),
      word: '1'.repeat(channels),
      headingDeg: 359.99,
      halfWidthDeg: 180,
      flags: (Object.keys(lineFlags) as LineFlag[]).filter((flag) => flag !== 'illegalWord'),
      average: { headingDeg: 359.99, agreement: 1 },
      cups: { pulses: COUNTER_MOST, edges: COUNTER_MOST, gustPulses: GUST_MOST },
    });
    // A heading of five digits and the flag of an illegal word, which means there is no heading, never come together.
    expect(formatLine(longest(5, 1023)).length + 1).toBe(lineCharsAtMost(5, 1023) - 1);
    expect(formatLine(longest(12, 65_535)).length + 1).toBe(lineCharsAtMost(12) - 1);
  });
});
