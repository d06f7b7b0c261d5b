import { look } from '../look.ts';
import { element, joined, type Markup } from '../markup.ts';
import { label, picture } from '../picture.ts';
import { bottomAxis, leftAxis, plotFrame, ticksBetween, type PlotBox } from './axis.ts';

/** Counts in classes of one width from 0 on, and values to be marked on them. */
export interface HistogramFacts {
  readonly title: string;
  readonly axisTitle: string;
  readonly unit: string;
  readonly classWidth: number;
  readonly counts: readonly number[];
  readonly marks: readonly { readonly at: number; readonly text: string }[];
}

const BOX: PlotBox = { left: 60, top: 24, width: 600, height: 190 };

/** A histogram with dashed lines at values that matter. */
export function histogramPicture({
  title,
  axisTitle,
  unit,
  classWidth,
  counts,
  marks,
}: HistogramFacts): Markup {
  const end = Math.max(classWidth * Math.max(1, counts.length), ...marks.map(({ at }) => 1.05 * at));
  const most = Math.max(1, ...counts);
  const x = (value: number): number => BOX.left + (value / end) * BOX.width;
  const y = (count: number): number => BOX.top + BOX.height * (1 - count / most);
  const bars = counts.map((count, i) =>
    element('rect', {
      x: x(i * classWidth),
      y: y(count),
      width: (classWidth / end) * BOX.width,
      height: BOX.top + BOX.height - y(count),
      fill: look.material,
      stroke: look.light,
      'stroke-width': 0.5,
    }),
  );
  const lines = marks.map(({ at, text }, i) =>
    joined([
      element('line', {
        x1: x(at),
        x2: x(at),
        y1: BOX.top,
        y2: BOX.top + BOX.height,
        stroke: look.accent,
        'stroke-dasharray': i % 2 === 0 ? '5 4' : '2 3',
        'stroke-width': 1.5,
      }),
      label(text, { x: x(at), y: BOX.top - 8 }, { 'text-anchor': 'middle', fill: look.accent }),
    ]),
  );
  const frame = { width: BOX.left + BOX.width + 40, height: BOX.top + BOX.height + 44, title };
  return picture(
    frame,
    plotFrame(BOX),
    ...bars,
    ...lines,
    bottomAxis(BOX, ticksBetween(0, end, 9), x, { unit, title: axisTitle }),
    leftAxis(BOX, ticksBetween(0, most, 5), y, ''),
  );
}
