import type { Point } from '../../disc/index.ts';
import type { SheetPage } from './pdfPage.ts';

/** Length of an arrow head, and how far lines run beyond the dimension. [mm] */
const HEAD_MM = 2;
const BEYOND_MM = 1.5;

function arrow(page: SheetPage, tip: Point, way: 1 | -1): void {
  for (const side of [1, -1]) {
    page.line(tip, { xMm: tip.xMm + way * HEAD_MM, yMm: tip.yMm + (side * HEAD_MM) / 4 });
  }
}

/**
 * A horizontal dimension below what it measures: extension lines, a line with two arrows, the text above it.
 *
 * @param from - Left and right end of what is measured. [mm on the page]
 * @param yMm - Height of the dimension line. [mm on the page]
 * @source ISO 129-1: extension lines a little beyond the dimension line, text above it.
 */
export function horizontalDimension(
  page: SheetPage,
  [left, right]: readonly [Point, Point],
  yMm: number,
  text: string,
): void {
  for (const end of [left, right]) {
    page.line({ xMm: end.xMm, yMm: end.yMm - BEYOND_MM }, { xMm: end.xMm, yMm: yMm - BEYOND_MM });
  }
  page.line({ xMm: left.xMm, yMm }, { xMm: right.xMm, yMm });
  const isNarrow = right.xMm - left.xMm < 5 * HEAD_MM;
  arrow(page, { xMm: left.xMm, yMm }, isNarrow ? -1 : 1);
  arrow(page, { xMm: right.xMm, yMm }, isNarrow ? 1 : -1);
  const at = isNarrow
    ? { xMm: right.xMm + 2.5 * HEAD_MM, yMm: yMm - 0.9 }
    : { xMm: (left.xMm + right.xMm) / 2, yMm: yMm + 0.8 };
  page.text(text, at, { sizeMm: 2.5, anchor: isNarrow ? 'start' : 'middle' });
}

/** A note with a line to the place it is about. */
export function leader(page: SheetPage, to: Point, textAt: Point, text: string): void {
  page.line(to, { xMm: textAt.xMm - 0.8, yMm: textAt.yMm + 0.9 });
  page.text(text, textAt, { sizeMm: 2.5 });
}
