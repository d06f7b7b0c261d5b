import type { Point } from '../../disc/index.ts';
import { MARGIN_MM, type Paper } from './paper.ts';
import type { SheetPage } from './pdfPage.ts';

/** Length of the bar a maker measures. [mm] */
export const BAR_MM = 100;

/** What a title block says. */
export interface TitleBlock {
  readonly name: string;
  readonly title: string;
  readonly scale: string;
  readonly material: string;
  readonly tolerance: string;
  readonly sheet: string;
}

/** Size of the title block. [mm] */
const BLOCK = { widthMm: 82, heightMm: 32 } as const;

function ruler(page: SheetPage, from: Point): void {
  for (let mm = 0; mm <= BAR_MM; mm++) {
    const length = mm % 10 === 0 ? 5 : mm % 5 === 0 ? 3.5 : 2;
    const x = from.xMm + mm;
    page.line({ xMm: x, yMm: from.yMm }, { xMm: x, yMm: from.yMm + length });
    if (mm % 10 === 0) page.text(String(mm), { xMm: x, yMm: from.yMm + 6 }, { sizeMm: 2, anchor: 'middle' });
  }
  page.line(from, { xMm: from.xMm + BAR_MM, yMm: from.yMm });
}

/** A solid bar whose ends are the ends of the length: no line sticks out. */
function bar(page: SheetPage, from: Point): void {
  const middle = from.yMm + 1.5;
  page.line({ xMm: from.xMm, yMm: middle }, { xMm: from.xMm + BAR_MM, yMm: middle }, 3);
  page.text(
    `Measure this bar: ${BAR_MM} mm. If it is not, print again at 100 %.`,
    { xMm: from.xMm, yMm: from.yMm + 4.5 },
    { sizeMm: 2.6, widthMm: BAR_MM },
  );
}

function titleBlock(page: SheetPage, from: Point, block: TitleBlock): void {
  const rows: [string, string][] = [
    ['instrument', block.name],
    ['drawing', block.title],
    ['scale', block.scale],
    ['material', block.material],
    ['tolerance', block.tolerance],
    ['sheet, date', `${block.sheet}   made on ____________`],
  ];
  page.box({ ...from, ...BLOCK }, 0.3);
  const rowMm = BLOCK.heightMm / rows.length;
  for (const [index, [label, value]] of rows.entries()) {
    const y = from.yMm + BLOCK.heightMm - (index + 1) * rowMm;
    if (index < rows.length - 1)
      page.line({ xMm: from.xMm, yMm: y }, { xMm: from.xMm + BLOCK.widthMm, yMm: y });
    page.text(label, { xMm: from.xMm + 1.5, yMm: y + 1.6 }, { sizeMm: 2 });
    const width = BLOCK.widthMm - 21;
    page.text(value, { xMm: from.xMm + 19, yMm: y + 1.6 }, { sizeMm: 2.5, widthMm: width });
  }
}

/** Ruler, bar and title block at the foot of a sheet. */
export function drawFooter(page: SheetPage, paper: Paper, block: TitleBlock): void {
  ruler(page, { xMm: MARGIN_MM, yMm: MARGIN_MM + 18 });
  bar(page, { xMm: MARGIN_MM, yMm: MARGIN_MM + 3 });
  titleBlock(page, { xMm: paper.widthMm - MARGIN_MM - BLOCK.widthMm, yMm: MARGIN_MM }, block);
}
