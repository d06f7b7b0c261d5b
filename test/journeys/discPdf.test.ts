import { execFileSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { processDefaults, type DiscSpec } from '../../src/core/disc/index.ts';
import { discPdf } from '../../src/core/make/index.ts';
import { misreadings } from '../support/discReadings.ts';
import { jettyDisc } from '../support/discSpecs.ts';
import { barMm, pageCount, renderPage, withPdf, type PageRaster } from '../support/pageRaster.ts';
import { exampleInstrument, plannedHead } from '../support/plannedHead.ts';

const font = readFileSync(new URL('../../node_modules/dejavu-fonts-ttf/ttf/DejaVuSans.ttf', import.meta.url));
const DPI = 300;
const PX_PER_MM = DPI / 25.4;
const film: DiscSpec = { ...jettyDisc, process: processDefaults.film, thicknessMm: 0.1 };

function sheetsOf(disc: DiscSpec, paper: 'a4' | 'a3' | 'letter' = 'a4', example = 'jetty') {
  const instrument = exampleInstrument(example, disc);
  return discPdf({ name: instrument.name, head: plannedHead(instrument) }, { paper, font });
}

/** Middle of the disc on its page: half way between its outermost ink, which lies above the ruler. [pixels] */
function middleOf(page: PageRaster): [number, number] {
  let [left, right, top, bottom] = [Infinity, 0, Infinity, 0];
  for (let row = 0; row < page.height * 0.8; row++) {
    for (let column = 0; column < page.width; column++) {
      if (!page.isDark(column, row)) continue;
      [left, right] = [Math.min(left, column), Math.max(right, column + 1)];
      [top, bottom] = [Math.min(top, row), Math.max(bottom, row + 1)];
    }
  }
  return [(left + right) / 2, (top + bottom) / 2];
}

describe('drawing sheets, rendered at 300 dpi by a foreign program', () => {
  it.each(['a4', 'a3', 'letter'] as const)(
    'show the bar at its true length on every sheet: %s',
    async (paper) => {
      const bytes = await sheetsOf(jettyDisc, paper);
      expect(pageCount(bytes)).toBe(3);
      for (const page of [1, 2, 3]) {
        // One pixel is 0.085 mm.
        expect(Math.abs(barMm(renderPage(bytes, page, DPI), DPI) - 100)).toBeLessThan(0.1);
      }
    },
  );

  it('show a printed pattern at true size, which decodes to the intended position all round', async () => {
    const page = renderPage(await sheetsOf(film), 1, DPI);
    const [x0, y0] = middleOf(page);
    const looks = (x: number, y: number) =>
      page.isDark(Math.floor(x0 + x * PX_PER_MM), Math.floor(y0 - y * PX_PER_MM));
    const { wrong, read } = misreadings(film, 32, 0.5, looks);
    expect(wrong).toEqual([]);
    expect(read).toBeGreaterThan(3000);
  });

  it('spread a disc larger than the paper over sheets that overlap', async () => {
    // 308 mm and clear paper: 190 by 233 mm an A4 sheet, 10 mm shared: 2 across, 2 down, and two more sheets.
    const large = { ...jettyDisc, diameterMm: 308, hubDiameterMm: 120, thicknessMm: 4 };
    const bytes = await sheetsOf(large);
    expect(pageCount(bytes)).toBe(6);
    expect(pageCount(await sheetsOf(large, 'a3'))).toBe(4);
    for (const page of [1, 4])
      expect(Math.abs(barMm(renderPage(bytes, page, DPI), DPI) - 100)).toBeLessThan(0.1);
  });

  it('are a sound PDF, with the names in plain text', async () => {
    const bytes = await sheetsOf(jettyDisc);
    const [check, text] = withPdf(bytes, (file) => [
      execFileSync('qpdf', ['--check', file], { encoding: 'utf8' }),
      execFileSync('pdftotext', [file, '-'], { encoding: 'utf8' }),
    ]) as [string, string];
    expect(check).toContain('No syntax or stream encoding errors found');
    expect(text).toContain('boathouse jetty vane');
    expect(text).toContain('⌀80 mm');
    expect(text).toContain('Measure this bar');
  });

  it('are the same to the last byte when drawn again', async () => {
    const [one, other] = [await sheetsOf(jettyDisc), await sheetsOf(structuredClone(jettyDisc))];
    expect(Buffer.from(one).equals(Buffer.from(other))).toBe(true);
  });
});
