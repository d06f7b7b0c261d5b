/** Sizes of paper a home printer takes. */
export type PaperName = 'a4' | 'a3' | 'letter';

/** A sheet of paper, upright. [mm] */
export interface Paper {
  readonly name: PaperName;
  readonly widthMm: number;
  readonly heightMm: number;
}

/** Papers by name. @source ISO 216 (A3, A4); ANSI/ASME Y14.1 (letter, 8.5 by 11 inches). */
export const papers: Readonly<Record<PaperName, Paper>> = {
  a4: { name: 'a4', widthMm: 210, heightMm: 297 },
  a3: { name: 'a3', widthMm: 297, heightMm: 420 },
  letter: { name: 'letter', widthMm: 215.9, heightMm: 279.4 },
};

/** Names of papers, in the order a maker should read them. */
export const paperNames = Object.keys(papers) as readonly PaperName[];

/** Edge that printers leave white. [mm] @source common practice, no source: most home printers reach within 6 mm. */
export const MARGIN_MM = 10;

/** Height kept for ruler, bar and title block. [mm] */
export const FOOTER_MM = 44;

/** A rectangle on a page, from its lower left corner. [mm] */
export interface Area {
  readonly xMm: number;
  readonly yMm: number;
  readonly widthMm: number;
  readonly heightMm: number;
}

/** What is left of a paper for drawing. */
export function drawingArea({ widthMm, heightMm }: Paper): Area {
  return {
    xMm: MARGIN_MM,
    yMm: MARGIN_MM + FOOTER_MM,
    widthMm: widthMm - 2 * MARGIN_MM,
    heightMm: heightMm - 2 * MARGIN_MM - FOOTER_MM,
  };
}
