import type { Loop } from '../loops.ts';
import { PdfWalk, type PdfValue } from './pdfValues.ts';

/** Six numbers that take a place of a drawing to its page. @source ISO 32000-1, 8.3.3 */
export type Matrix = readonly [number, number, number, number, number, number];

/** Something painted on a page, its lines as they lie on the page. [mm], y up */
export interface PdfPath {
  /** Name of the marked part it belongs to, `/` left out; `null` outside every one. */
  readonly mark: string | null;
  readonly loops: readonly Loop[];
  /** Colour within, `#rrggbb`; `null` where lines are drawn. */
  readonly fill: string | null;
  readonly lineMm: number;
  /** What is shown of it: left, low, right, high; `null` where nothing is hidden. [mm] */
  readonly clip: readonly [number, number, number, number] | null;
  /** From the drawing to the page; moves in points. */
  readonly matrix: Matrix;
}

type Place = [number, number];

/** @source ISO 32000-1, 8.3.2.3: 72 units an inch */
const MM_PER_PT = 25.4 / 72;

/** Straight pieces of a curve. */
const PIECES = 24;

interface State {
  matrix: Matrix;
  lineWidth: number;
  fill: string;
  clip: PdfPath['clip'];
}

/** Where a drawing's place lies on the page, both in points. */
export function applied([a, b, c, d, e, f]: Matrix, x: number, y: number): Place {
  return [a * x + c * y + e, b * x + d * y + f];
}

function joined([a, b, c, d, e, f]: Matrix, outer: Matrix): Matrix {
  const [oa, ob, oc, od] = outer;
  const [x, y] = applied(outer, e, f);
  return [a * oa + b * oc, a * ob + b * od, c * oa + d * oc, c * ob + d * od, x, y];
}

function curve(from: Place, [x1, y1, x2, y2, x3, y3]: readonly number[]): Place[] {
  return Array.from({ length: PIECES }, (_, piece) => {
    const t = (piece + 1) / PIECES;
    const weights = [(1 - t) ** 3, 3 * t * (1 - t) ** 2, 3 * t * t * (1 - t), t ** 3] as const;
    const at = (values: readonly number[]): number =>
      values.reduce((sum, value, i) => sum + weights[i as 0 | 1 | 2 | 3] * value, 0);
    return [at([from[0], x1!, x2!, x3!]), at([from[1], y1!, y2!, y3!])];
  });
}

const hex = (share: number): string =>
  Math.round(255 * share)
    .toString(16)
    .padStart(2, '0');

/** Runs the operators of a page that draw lines and areas; text is passed over. */
class Painter {
  readonly painted: PdfPath[] = [];
  #state: State = { matrix: [1, 0, 0, 1, 0, 0], lineWidth: 1, fill: '#000000', clip: null };
  readonly #saved: State[] = [];
  readonly #marks: string[] = [];
  #loops: Place[][] = [];
  #isClipping = false;

  /** One operator with what stands before it. @source ISO 32000-1, annex A */
  run(operator: string, operands: readonly PdfValue[]): void {
    const numbers = operands.filter((value) => typeof value === 'number');
    const [x, y] = numbers.slice(-2) as Place;
    const loop = this.#loops.at(-1);
    if (operator === 'm') this.#loops.push([[x, y]]);
    else if (operator === 'l') loop?.push([x, y]);
    else if (operator === 'c') loop?.push(...curve(loop.at(-1)!, numbers));
    else if (operator === 'q') this.#saved.push({ ...this.#state });
    else if (operator === 'Q') this.#state = this.#saved.pop() ?? this.#state;
    else if (operator === 'cm') this.#state.matrix = joined(numbers as unknown as Matrix, this.#state.matrix);
    else if (operator === 'w') this.#state.lineWidth = x ?? y;
    else if (operator === 'rg') this.#state.fill = `#${numbers.map(hex).join('')}`;
    else if (operator === 'BMC') this.#marks.push(String(operands[0]).slice(1));
    else if (operator === 'EMC') this.#marks.pop();
    else if (operator === 'W' || operator === 'W*') this.#isClipping = true;
    else if (/^(f|F|f\*|S|s|n)$/.test(operator)) this.#end(operator);
  }

  #end(operator: string): void {
    const { matrix, lineWidth, fill, clip } = this.#state;
    const loops = this.#loops.map((loop) =>
      loop.map(([x, y]): Place => {
        const [px, py] = applied(matrix, x, y);
        return [px * MM_PER_PT, py * MM_PER_PT];
      }),
    );
    this.#loops = [];
    if (this.#isClipping) {
      const [xs, ys] = [0, 1].map((axis) => loops.flat().map((place) => place[axis as 0 | 1])) as [
        number[],
        number[],
      ];
      this.#state.clip = [Math.min(...xs), Math.min(...ys), Math.max(...xs), Math.max(...ys)];
      this.#isClipping = false;
    }
    if (operator === 'n') return;
    const lineMm = lineWidth * Math.sqrt(Math.abs(matrix[0] * matrix[3] - matrix[1] * matrix[2])) * MM_PER_PT;
    const isFilled = /^[fF]/.test(operator);
    this.painted.push({
      mark: this.#marks.at(-1) ?? null,
      loops,
      fill: isFilled ? fill : null,
      lineMm,
      clip,
      matrix,
    });
  }
}

/**
 * Everything that is painted on a page, in order.
 *
 * @param content - Operators of the page.
 */
export function readPdfPaths(content: string): PdfPath[] {
  const walk = new PdfWalk(content);
  const painter = new Painter();
  let operands: PdfValue[] = [];
  for (let value = walk.next(); value !== null; value = walk.next()) {
    if (typeof value === 'string' && /^[A-Za-z'"]/.test(value)) {
      painter.run(value, operands);
      operands = [];
    } else operands.push(value);
  }
  return painter.painted;
}
