import { element, joined, type Markup } from '../markup.ts';
import { label } from '../picture.ts';
import { look } from '../look.ts';

/** Where a plot lies in its picture. [user units] */
export interface PlotBox {
  readonly left: number;
  readonly top: number;
  readonly width: number;
  readonly height: number;
}

/** Round steps that ticks may have, times a power of ten. */
const STEPS = [1, 2, 5, 10];

/**
 * Round numbers along an axis.
 *
 * @param from - First value. @param to - Last value, above the first; any one unit. [-]
 * @param most - Ticks at most. [-], ≥ 2
 * @returns Ascending, from the first round number on. n ≤ most
 */
export function ticksBetween(from: number, to: number, most: number): number[] {
  const rough = (to - from) / Math.max(1, most - 1);
  const decade = 10 ** Math.floor(Math.log10(rough));
  const step = STEPS.map((times) => times * decade).find((size) => size >= rough * (1 - 1e-9))!;
  const first = Math.ceil(from / step - 1e-9);
  const last = Math.floor(to / step + 1e-9);
  return Array.from({ length: last - first + 1 }, (_, i) => Number(((first + i) * step).toPrecision(12)));
}

/** Paper of a plot with a thin frame. */
export function plotFrame({ left, top, width, height }: PlotBox): Markup {
  return element('rect', { x: left, y: top, width, height, fill: look.light, stroke: look.line });
}

/** Ticks below a plot with their words; `x` puts a value in its place. [user units] */
export function bottomAxis(
  { left, top, width, height }: PlotBox,
  ticks: readonly number[],
  x: (value: number) => number,
  words: { readonly unit: string; readonly title: string },
): Markup {
  const bottom = top + height;
  const marks = ticks.map((tick) =>
    joined([
      element('line', { x1: x(tick), x2: x(tick), y1: bottom, y2: bottom + 4, stroke: look.faintInk }),
      label(
        `${tick}${words.unit}`,
        { x: x(tick), y: bottom + 16 },
        { 'text-anchor': 'middle', fill: look.faintInk },
      ),
    ]),
  );
  return joined([
    ...marks,
    label(words.title, { x: left + width / 2, y: bottom + 34 }, { 'text-anchor': 'middle' }),
  ]);
}

/** Ticks left of a plot with their words; `y` puts a value in its place. [user units] */
export function leftAxis(
  { left }: PlotBox,
  ticks: readonly number[],
  y: (value: number) => number,
  unit: string,
): Markup {
  return joined(
    ticks.map((tick) =>
      joined([
        element('line', { x1: left - 4, x2: left, y1: y(tick), y2: y(tick), stroke: look.faintInk }),
        label(
          `${tick}${unit}`,
          { x: left - 8, y: y(tick) + 4 },
          { 'text-anchor': 'end', fill: look.faintInk },
        ),
      ]),
    ),
  );
}
