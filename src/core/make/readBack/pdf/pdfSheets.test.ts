import { zlibSync } from 'fflate';
import { describe, expect, it } from 'vitest';
import { readPdfSheets } from './pdfSheets.ts';

const latin = (text: string) => Uint8Array.from(text, (letter) => letter.charCodeAt(0));

/** A PDF written by hand: one page with these operators, packed or plain. */
function pdfOf(operators: string, isPacked = false): Uint8Array {
  const stream = isPacked ? zlibSync(latin(operators)) : latin(operators);
  const filter = isPacked ? '/Filter /FlateDecode ' : '';
  const head = `%PDF-1.7
1 0 obj << /Type /Catalog /Pages 2 0 R >> endobj
2 0 obj << /Type /Pages /Kids [3 0 R] /Count 1 /MediaBox [0 0 595.28 841.89] >> endobj
3 0 obj << /Type /Page /Parent 2 0 R /Contents 4 0 R /Title (a \\) bracket) >> endobj
4 0 obj << ${filter}/Length ${stream.length} >>
stream
`;
  return Uint8Array.from([...latin(head), ...stream, ...latin('\nendstream\nendobj\nstartxref\n0\n%%EOF')]);
}

/** 100 mm are 100 / 25.4 * 72 points. */
const BAR = '8.503937 w 28.346457 36.850394 m 311.811024 36.850394 l S';

describe('a sheet read back', () => {
  it.each([false, true])('has a bar of the length of its thick line, packed: %s', (isPacked) => {
    const thin = '0.37 w 0 0 m 500 0 l S';
    const [sheet] = readPdfSheets(pdfOf(`${BAR}\n${thin}`, isPacked), 'Pattern');
    expect(sheet!.barMm).toBeCloseTo(100, 5);
    expect(sheet!.pattern).toEqual([]);
  });

  it('has no bar where the only thick line belongs to a drawing', () => {
    const [sheet] = readPdfSheets(pdfOf(`/cut BMC ${BAR} EMC`), 'Pattern');
    expect(sheet!.barMm).toBe(0);
  });

  const drawing = (matrix: string) =>
    `q /Pattern BMC 0 0 m 283.464567 0 l 283.464567 283.464567 l 0 283.464567 l h W n
     ${matrix} cm 1 0 0.2 rg
     28.346457 0 m 28.346457 15.655 15.655 28.346457 0 28.346457 c 0 0 l h f* EMC Q`;

  it('shows a quarter of a circle of 10 mm round the origin of its drawing', () => {
    const [sheet] = readPdfSheets(pdfOf(drawing('1 0 0 1 141.732283 141.732283')), 'Pattern');
    const [{ fill, loops, shows }] = sheet!.pattern as [(typeof sheet & object)['pattern'][number]];
    expect(fill).toBe('#ff0033');
    const arc = loops[0]!.slice(0, -1);
    for (const [x, y] of arc) expect(Math.hypot(x, y)).toBeCloseTo(10, 2);
    expect(arc[0]![0]).toBeCloseTo(10, 5);
    expect(arc.at(-1)![1]).toBeCloseTo(10, 5);
    // The sheet shows 100 mm, the origin in their middle.
    expect([shows(49.9, -49.9), shows(50.1, 0), shows(0, -50.1)]).toEqual([true, false, false]);
  });

  it('has no true size where the drawing was made smaller', () => {
    const [sheet] = readPdfSheets(pdfOf(drawing('0.97 0 0 0.97 141.732283 141.732283')), 'Pattern');
    expect(sheet!.pattern).toEqual([]);
  });

  it('is none where the bytes are no PDF', () => {
    expect(readPdfSheets(latin('<svg/>'), 'Pattern')).toEqual([]);
    const damaged = pdfOf(BAR, true);
    damaged.fill(0, damaged.length - 60, damaged.length - 40);
    expect(readPdfSheets(damaged, 'Pattern').map(({ barMm }) => barMm)).toEqual([0]);
  });
});
