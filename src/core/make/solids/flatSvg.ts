import { element, type Markup } from '../../report/index.ts';
import { showNumber } from '../../units/index.ts';
import { svgPen } from '../svg/svgPen.ts';
import { drawFlat, flatOutlines, type FlatPart } from './flat.ts';

/** Lines of one operation. */
export interface FlatLayer {
  /** What the machine does along these lines. */
  readonly operation: 'cut' | 'engrave' | 'print';
  readonly part: FlatPart;
}

/** Clear paper round the part. [mm] */
const MARGIN_MM = 3;

/** Width of a drawn line; a cutter follows its middle. [mm] */
const LINE_MM = 0.1;

const paints = {
  cut: { fill: 'none', stroke: '#000', 'stroke-width': LINE_MM },
  engrave: { fill: 'none', stroke: '#06c', 'stroke-width': LINE_MM },
  print: { fill: '#000', 'fill-rule': 'evenodd' },
} as const;

function layerPath({ operation, part }: FlatLayer): Markup {
  const { pen, pathData } = svgPen();
  drawFlat(part, pen);
  return element('path', { id: operation, d: pathData(), ...paints[operation] });
}

/**
 * A flat part as an SVG drawing in true millimetres: one path an operation, circles as true arcs.
 *
 * @param title - What it is.
 * @param layers - In the order of the work.
 * @returns The whole file; equal parts give equal bytes.
 * @check src/core/make/coupon/couponParts.test.ts
 */
export function flatSvg(title: string, layers: readonly FlatLayer[]): string {
  const places = layers.flatMap(({ part }) => flatOutlines(part).flat());
  const over = (pick: (a: number, b: number) => number, axis: 0 | 1): number =>
    places.map((place) => place[axis]).reduce((a, b) => pick(a, b));
  const [left, right] = [over(Math.min, 0) - MARGIN_MM, over(Math.max, 0) + MARGIN_MM];
  const [low, high] = [over(Math.min, 1) - MARGIN_MM, over(Math.max, 1) + MARGIN_MM];
  const [width, height] = [showNumber(right - left, 3), showNumber(high - low, 3)];
  const drawing = element(
    'svg',
    {
      xmlns: 'http://www.w3.org/2000/svg',
      width: `${width}mm`,
      height: `${height}mm`,
      viewBox: `${showNumber(left, 3)} ${showNumber(-high, 3)} ${width} ${height}`,
      role: 'img',
    },
    element('title', {}, title),
    ...layers.filter(({ part }) => part.length > 0).map(layerPath),
  );
  return `<?xml version="1.0" encoding="UTF-8"?>\n${drawing.html}\n`;
}
