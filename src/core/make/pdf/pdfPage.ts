import {
  appendBezierCurve,
  closePath,
  concatTransformationMatrix,
  lineTo,
  moveTo,
  PDFOperator,
  PDFOperatorNames,
  popGraphicsState,
  pushGraphicsState,
  setFillingRgbColor,
  setLineWidth,
  setStrokingRgbColor,
  stroke,
  type PDFFont,
  type PDFPage,
} from 'pdf-lib';
import type { Pen, Point } from '../../disc/index.ts';
import { arcPieces } from '../svg/arcPieces.ts';
import type { Area } from './paper.ts';

/** Points of PDF for each millimetre. @source ISO 32000-1, 8.3.2.3: 72 units an inch; an inch is 25.4 mm. */
export const PT_PER_MM = 72 / 25.4;

/** Longest arc drawn as one Bézier curve: of 30 degrees it is off by 4e-8 of its radius. [rad] */
const LONGEST_ARC = Math.PI / 6;

/** Width of a thin line. [mm] */
const THIN_MM = 0.13;

/** Places of a point that reach the file: a hundred-thousandth of a millimetre. */
const PLACES = 6;

const pt = (length: number): number => Number((length * PT_PER_MM).toFixed(PLACES));

/** Where text stands to the place it is given. */
export interface TextStyle {
  readonly sizeMm?: number;
  readonly anchor?: 'start' | 'middle' | 'end';
  /** Text is cut short, with an ellipsis, to this width. [mm] */
  readonly widthMm?: number;
}

/** How an outline is drawn. */
export type Paint = { readonly fill: string } | { readonly lineMm: number };

/** Red, green and blue of `#rrggbb`, each 0..1. */
function rgb(colour: string): [number, number, number] {
  const part = (at: number): number => parseInt(colour.slice(at, at + 2), 16) / 255;
  return [part(1), part(3), part(5)];
}

/** One page, drawn on in millimetres from its lower left corner, y up. */
export class SheetPage {
  readonly #page: PDFPage;
  readonly #font: PDFFont;

  constructor(page: PDFPage, font: PDFFont) {
    this.#page = page;
    this.#font = font;
  }

  line(from: Point, to: Point, lineMm = THIN_MM): void {
    this.#page.pushOperators(
      setLineWidth(pt(lineMm)),
      moveTo(pt(from.xMm), pt(from.yMm)),
      lineTo(pt(to.xMm), pt(to.yMm)),
      stroke(),
    );
  }

  box({ xMm, yMm, widthMm, heightMm }: Area, lineMm = THIN_MM): void {
    const corner = (x: number, y: number): Point => ({ xMm: xMm + x * widthMm, yMm: yMm + y * heightMm });
    const corners = [corner(0, 0), corner(1, 0), corner(1, 1), corner(0, 1)];
    for (const [i, from] of corners.entries()) this.line(from, corners[(i + 1) % 4]!, lineMm);
  }

  /** Width of text. [mm] */
  widthMm(text: string, sizeMm: number): number {
    return this.#font.widthOfTextAtSize(text, pt(sizeMm)) / PT_PER_MM;
  }

  text(
    words: string,
    at: Point,
    { sizeMm = 2.8, anchor = 'start', widthMm = Infinity }: TextStyle = {},
  ): void {
    let shown = words;
    const letters = [...words];
    while (letters.length > 0 && this.widthMm(shown, sizeMm) > widthMm) {
      letters.pop();
      shown = `${letters.join('').trimEnd()}…`;
    }
    const back = { start: 0, middle: 0.5, end: 1 }[anchor] * this.widthMm(shown, sizeMm);
    this.#page.drawText(shown, { x: pt(at.xMm - back), y: pt(at.yMm), size: pt(sizeMm), font: this.#font });
  }

  /**
   * Draws outlines of a drawing with its origin at a place of the page, shown only within an area.
   *
   * @param name - Marks the drawing in the file, so that a reader finds it.
   * @param scale - Size on paper over true size. [-]
   */
  drawing(
    name: string,
    place: { readonly at: Point; readonly within: Area; readonly scale?: number },
    paint: Paint,
    draw: (pen: Pen) => void,
  ): void {
    const { at, within, scale = 1 } = place;
    const page = this.#page;
    page.pushOperators(
      pushGraphicsState(),
      PDFOperator.of(PDFOperatorNames.BeginMarkedContent, [`/${name}`]),
      moveTo(pt(within.xMm), pt(within.yMm)),
      lineTo(pt(within.xMm + within.widthMm), pt(within.yMm)),
      lineTo(pt(within.xMm + within.widthMm), pt(within.yMm + within.heightMm)),
      lineTo(pt(within.xMm), pt(within.yMm + within.heightMm)),
      closePath(),
      PDFOperator.of(PDFOperatorNames.ClipNonZero),
      PDFOperator.of(PDFOperatorNames.EndPath),
      concatTransformationMatrix(scale, 0, 0, scale, pt(at.xMm), pt(at.yMm)),
      ...('fill' in paint
        ? [setFillingRgbColor(...rgb(paint.fill))]
        : [setLineWidth(pt(paint.lineMm / scale))]),
      setStrokingRgbColor(0, 0, 0),
    );
    draw(operatorPen((operator) => page.pushOperators(operator)));
    page.pushOperators(
      'fill' in paint ? PDFOperator.of(PDFOperatorNames.FillEvenOdd) : stroke(),
      PDFOperator.of(PDFOperatorNames.EndMarkedContent),
      popGraphicsState(),
    );
  }
}

/**
 * A pen that draws by PDF operators, arcs as Bézier curves of at most 30 degrees.
 *
 * @source handle length 4/3 tan(a quarter of the angle) of the radius: the curve meets its circle at both ends and in the
 * middle.
 * @check test/journeys/discPdf.test.ts (a foreign renderer at 300 dpi)
 */
function operatorPen(write: (operator: PDFOperator) => void): Pen {
  let at: Point = { xMm: 0, yMm: 0 };
  return {
    moveTo(to) {
      write(moveTo(pt(to.xMm), pt(to.yMm)));
      at = to;
    },
    lineTo(to) {
      write(lineTo(pt(to.xMm), pt(to.yMm)));
      at = to;
    },
    arcTo(to, centre, clockwise) {
      for (const piece of arcPieces({ from: at, to, centre, clockwise }, LONGEST_ARC)) {
        const handle = (4 / 3) * Math.tan(piece.turn / 4);
        const tip = (of: Point, way: number): [number, number] => [
          pt(of.xMm - way * handle * (of.yMm - centre.yMm)),
          pt(of.yMm + way * handle * (of.xMm - centre.xMm)),
        ];
        write(appendBezierCurve(...tip(at, 1), ...tip(piece.to, -1), pt(piece.to.xMm), pt(piece.to.yMm)));
        at = piece.to;
      }
    },
    close: () => write(closePath()),
  };
}
