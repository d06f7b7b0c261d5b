import { movedOutline, rectangleOutline, type Outline, type Place } from './outline.ts';

/** Height and width of a digit, width of its strokes, and clear space between signs. [mm] */
const HEIGHT_MM = 4;
const WIDTH_MM = 2.4;
const STROKE_MM = 0.6;
const SPACE_MM = 0.6;

/** Which of the seven strokes each digit has: top, upper right, lower right, bottom, lower left, upper left, middle. */
const strokes: Readonly<Record<string, string>> = {
  '0': 'abcdef',
  '1': 'bc',
  '2': 'abged',
  '3': 'abgcd',
  '4': 'fgbc',
  '5': 'afgcd',
  '6': 'afgedc',
  '7': 'abc',
  '8': 'abcdefg',
  '9': 'abcdfg',
};

/** Middle of each stroke, from the lower left corner of the digit, and whether it lies flat. */
const [LEFT, RIGHT] = [STROKE_MM / 2, WIDTH_MM - STROKE_MM / 2];
const places: Readonly<Record<string, { at: Place; isFlat: boolean }>> = {
  a: { at: [WIDTH_MM / 2, HEIGHT_MM - STROKE_MM / 2], isFlat: true },
  b: { at: [RIGHT, HEIGHT_MM * 0.75], isFlat: false },
  c: { at: [RIGHT, HEIGHT_MM * 0.25], isFlat: false },
  d: { at: [WIDTH_MM / 2, STROKE_MM / 2], isFlat: true },
  e: { at: [LEFT, HEIGHT_MM * 0.25], isFlat: false },
  f: { at: [LEFT, HEIGHT_MM * 0.75], isFlat: false },
  g: { at: [WIDTH_MM / 2, HEIGHT_MM / 2], isFlat: true },
};

// Flat strokes end where upright ones begin, so that none lies over another.
const FLAT: Outline = rectangleOutline([WIDTH_MM - 2 * STROKE_MM, STROKE_MM]);
const UPRIGHT: Outline = rectangleOutline([STROKE_MM, HEIGHT_MM / 2]);

function widthOf(sign: string): number {
  return sign === '.' ? STROKE_MM : WIDTH_MM;
}

/** Width of a number in strokes. [mm] */
export function digitsWidthMm(text: string): number {
  return [...text].reduce((width, sign) => width + widthOf(sign) + SPACE_MM, -SPACE_MM);
}

/** Height of a number in strokes. [mm] */
export const DIGITS_HEIGHT_MM = HEIGHT_MM;

/**
 * A number in strokes that print and engrave well, none of them over another.
 *
 * @param text - Digits and points.
 * @param middle - Middle of the number. [mm]
 */
export function digitOutlines(text: string, middle: Place): Outline[] {
  let left = middle[0] - digitsWidthMm(text) / 2;
  const bottom = middle[1] - HEIGHT_MM / 2;
  return [...text].flatMap((sign) => {
    const from: Place = [left, bottom];
    left += widthOf(sign) + SPACE_MM;
    if (sign === '.')
      return [rectangleOutline([STROKE_MM, STROKE_MM], [from[0] + STROKE_MM / 2, from[1] + STROKE_MM / 2])];
    return [...strokes[sign]!].map((stroke) => {
      const { at, isFlat } = places[stroke]!;
      return movedOutline(isFlat ? FLAT : UPRIGHT, [from[0] + at[0], from[1] + at[1]]);
    });
  });
}
