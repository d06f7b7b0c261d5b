import { execFileSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

/** A page as a printer would put it on paper. */
export interface PageRaster {
  readonly width: number;
  readonly height: number;
  /** True where there is ink; row 0 is the top. [pixels] */
  isDark(column: number, row: number): boolean;
}

/** Runs work on a PDF that lies in a folder of its own. */
export function withPdf<Result>(bytes: Uint8Array, work: (file: string, folder: string) => Result): Result {
  const folder = mkdtempSync(join(tmpdir(), 'disc-pdf-'));
  try {
    const file = join(folder, 'sheets.pdf');
    writeFileSync(file, bytes);
    return work(file, folder);
  } finally {
    rmSync(folder, { recursive: true });
  }
}

/** One page rendered by pdftoppm (Debian package `poppler-utils`). @param dpi - Pixels an inch. */
export function renderPage(bytes: Uint8Array, page: number, dpi: number): PageRaster {
  return withPdf(bytes, (file, folder) => {
    const name = join(folder, 'page');
    const only = ['-f', String(page), '-l', String(page), '-singlefile'];
    execFileSync('pdftoppm', ['-r', String(dpi), '-gray', '-aa', 'no', ...only, file, name]);
    const image = readFileSync(`${name}.pgm`);
    const header = /^P5\s+(\d+)\s+(\d+)\s+255\s/.exec(image.subarray(0, 60).toString('latin1'))!;
    const [width, height] = [Number(header[1]), Number(header[2])];
    const pixels = image.subarray(header[0].length);
    return { width, height, isDark: (column, row) => pixels[row * width + column]! < 128 };
  });
}

/** The longest unbroken dark run of a row, and where it begins. [pixels] */
export function longestDark({ width, isDark }: PageRaster, row: number): { from: number; length: number } {
  let best = { from: 0, length: 0 };
  for (let column = 0; column < width; column++) {
    if (!isDark(column, row)) continue;
    const from = column;
    while (column < width && isDark(column, row)) column++;
    if (column - from > best.length) best = { from, length: column - from };
  }
  return best;
}

/** Pages of a PDF, as pdfinfo (Debian package `poppler-utils`) counts them. */
export function pageCount(bytes: Uint8Array): number {
  const said = withPdf(bytes, (file) => execFileSync('pdfinfo', [file], { encoding: 'utf8' }));
  return Number(/Pages:\s+(\d+)/.exec(said)![1]);
}

/** Length of the thick bar at the foot: of rows dark for a long way, those alike for 2 mm down the page. [mm] */
export function barMm(page: PageRaster, dpi: number): number {
  const pxPerMm = dpi / 25.4;
  const thick = Math.round(2 * pxPerMm);
  // The pattern lies higher up: look at the foot of the page only.
  const from = Math.round(page.height * 0.85);
  const lengths = Array.from(
    { length: page.height - from },
    (_, row) => longestDark(page, from + row).length,
  );
  const alike = lengths.slice(0, -thick).map((_, row) => Math.min(...lengths.slice(row, row + thick)));
  return Math.max(...alike) / pxPerMm;
}
