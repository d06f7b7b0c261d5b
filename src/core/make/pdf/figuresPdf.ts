import { blankDocument, type SheetSetting } from './blankDocument.ts';
import { MARGIN_MM, papers } from './paper.ts';
import type { SheetPage } from './pdfPage.ts';

/** A table of text, its columns as wide as its shares say. */
export interface FiguresTable {
  readonly title: string;
  readonly headings: readonly string[];
  /** Share of the page's width that each column takes. [-], sum 1 */
  readonly shares: readonly number[];
  readonly rows: readonly (readonly string[])[];
}

/** What one page says. */
export interface FiguresPage {
  readonly title: string;
  /** Lines below the title; the first of them stands out. */
  readonly lines: readonly string[];
  readonly tables: readonly FiguresTable[];
}

/** Largest size of the text; a fuller page is set smaller until it fits. [mm] */
const LARGEST_MM = 2.9;
const SHRINK = 0.96;
/** Line to line over size, and the gap between columns. [-] */
const LEADING = 1.35;
const GAP_MM = 2;

/** Width of a text at a size. [mm] */
type Measure = (text: string, sizeMm: number) => number;

/** Measures each word once, since a width grows with the size. */
function measuredOnce(page: SheetPage): Measure {
  const widths = new Map<string, number>();
  return (text, sizeMm) => {
    const width = widths.get(text) ?? page.widthMm(text, 1);
    widths.set(text, width);
    return width * sizeMm;
  };
}

/** Words of a cell broken into lines of a width. */
function broken(measure: Measure, text: string, widthMm: number, sizeMm: number): string[] {
  const gap = measure(' ', sizeMm);
  const lines: string[] = [];
  let [line, used] = ['', 0];
  for (const word of text.split(/\s+/)) {
    const width = measure(word, sizeMm);
    if (line !== '' && used + gap + width > widthMm) {
      lines.push(line);
      [line, used] = [word, width];
    } else [line, used] = line === '' ? [word, width] : [`${line} ${word}`, used + gap + width];
  }
  return [...lines, line];
}

/** A line of text at its place on the page. */
interface Placed {
  readonly text: string;
  readonly xMm: number;
  /** From the top of the drawn area. [mm] */
  readonly downMm: number;
  readonly sizeMm: number;
}

/** Everything placed at one size of text, and how far down it reaches. */
function placed(measure: Measure, content: FiguresPage, widthMm: number, sizeMm: number) {
  const texts: Placed[] = [];
  const rules: number[] = [];
  let downMm = 0;
  const row = (cells: readonly string[], shares: readonly number[], size: number): void => {
    const columns = cells.map((cell, i) => broken(measure, cell, shares[i]! * widthMm - GAP_MM, size));
    let xMm = MARGIN_MM;
    for (const [i, lines] of columns.entries()) {
      for (const [n, text] of lines.entries()) {
        texts.push({ text, xMm, downMm: downMm + (n + 1) * size * LEADING, sizeMm: size });
      }
      xMm += shares[i]! * widthMm;
    }
    downMm += Math.max(...columns.map(({ length }) => length)) * size * LEADING;
  };
  row([content.title], [1], 1.7 * sizeMm);
  for (const [i, line] of content.lines.entries()) row([line], [1], i === 0 ? 1.25 * sizeMm : sizeMm);
  for (const { title, headings, shares, rows } of content.tables) {
    downMm += sizeMm;
    row([title], [1], 1.2 * sizeMm);
    for (const cells of [headings, ...rows]) {
      row(cells, shares, sizeMm);
      downMm += 0.4 * sizeMm;
      rules.push(downMm);
    }
  }
  return { texts, rules, downMm };
}

/** Draws one page of figures, as large as fits. */
function drawPage(page: SheetPage, content: FiguresPage, setting: SheetSetting): void {
  const paper = papers[setting.paper];
  const widthMm = paper.widthMm - 2 * MARGIN_MM;
  const heightMm = paper.heightMm - 2 * MARGIN_MM;
  let sizeMm = LARGEST_MM;
  const measure = measuredOnce(page);
  let all = placed(measure, content, widthMm, sizeMm);
  while (all.downMm > heightMm) {
    sizeMm *= SHRINK;
    all = placed(measure, content, widthMm, sizeMm);
  }
  const top = paper.heightMm - MARGIN_MM;
  for (const { text, xMm, downMm, sizeMm: size } of all.texts) {
    page.text(text, { xMm, yMm: top - downMm }, { sizeMm: size });
  }
  for (const down of all.rules) {
    page.line({ xMm: MARGIN_MM, yMm: top - down }, { xMm: MARGIN_MM + widthMm, yMm: top - down });
  }
}

/**
 * Pages of figures, such as a certificate: each as large as fits on its sheet.
 *
 * @param first - What the first page says; tables break their cells into lines.
 * @param setting - Paper and font.
 * @param more - What further pages say.
 * @returns The whole file; equal content gives equal bytes.
 * @check test/journeys/fitCertificate.test.ts (pdftotext and pdfinfo)
 */
export async function figuresPdf(
  first: FiguresPage,
  setting: SheetSetting,
  more: readonly FiguresPage[] = [],
): Promise<Uint8Array> {
  const document = await blankDocument(first.title, setting);
  for (const content of [first, ...more]) drawPage(document.addPage(), content, setting);
  return document.save();
}
