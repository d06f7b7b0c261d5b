import type { Loop } from '../loops.ts';
import { readPdfPages } from './pdfPages.ts';
import { applied, readPdfPaths, type PdfPath } from './pdfPaths.ts';

/** A drawing at true size on a sheet. */
export interface TrueDrawing {
  /** Colour within, `#rrggbb`; `null` where lines are drawn. */
  readonly fill: string | null;
  /** Its lines, from its own origin. [mm], y up */
  readonly loops: readonly Loop[];
  /** True where the sheet shows a place of the drawing. [mm] */
  shows(x: number, y: number): boolean;
}

/** One sheet, as it was read back. */
export interface PdfSheet {
  /** Length of the longest thick line outside every drawing: the bar to measure. [mm] */
  readonly barMm: number;
  /** What is drawn of the pattern at true size, in order; none on other sheets. */
  readonly pattern: readonly TrueDrawing[];
}

/** @source ISO 32000-1, 8.3.2.3 */
const MM_PER_PT = 25.4 / 72;

/** A line this thick is no outline. [mm] */
const THICK_MM = 2;

function trueDrawing({ matrix, clip, fill, loops }: PdfPath): TrueDrawing[] {
  const [a, b, c, d] = matrix;
  if (!clip || a !== 1 || b !== 0 || c !== 0 || d !== 1) return [];
  const [x0, y0] = applied(matrix, 0, 0).map((at) => at * MM_PER_PT) as [number, number];
  const [left, low, right, high] = clip;
  return [
    {
      fill,
      loops: loops.map((loop) => loop.map(([x, y]) => [x - x0, y - y0])),
      shows: (x, y) => left <= x + x0 && x + x0 <= right && low <= y + y0 && y + y0 <= high,
    },
  ];
}

/**
 * Sheets of a PDF as a maker would look at them: the bar to measure, and the pattern where it has its true size.
 *
 * @param bytes - The file.
 * @param mark - Name that marks the pattern in it.
 * @check src/core/make/readBack/pdf/pdfSheets.test.ts
 */
export function readPdfSheets(bytes: Uint8Array, mark: string): PdfSheet[] {
  return readPdfPages(bytes).map(({ content }) => {
    const paths = readPdfPaths(content);
    const bars = paths
      .filter((path) => path.mark === null && path.fill === null && path.lineMm > THICK_MM)
      .flatMap(({ loops }) => loops)
      .map((line) => Math.hypot(line.at(-1)![0] - line[0]![0], line.at(-1)![1] - line[0]![1]));
    return {
      barMm: Math.max(0, ...bars),
      pattern: paths.filter((path) => path.mark === mark).flatMap(trueDrawing),
    };
  });
}
