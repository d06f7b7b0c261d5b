import { look } from '../look.ts';
import { element, joined, type Markup } from '../markup.ts';
import { label, picture } from '../picture.ts';

/** One bar: how long, and what stands beside it. */
export interface Bar {
  readonly title: string;
  readonly value: number;
  /** The value as it is read, with its unit. */
  readonly text: string;
  /** Filled bars are fixed, hatched outlines scattered: told apart without colour. */
  readonly isFilled: boolean;
}

const LEFT = 250;
const WIDTH = 380;
const ROW = 24;

/**
 * Bars under each other, longest first as they are given.
 *
 * @param title - What is seen. @param bars - n ≥ 0
 */
export function barPicture(title: string, bars: readonly Bar[]): Markup {
  const most = Math.max(1e-12, ...bars.map(({ value }) => value));
  const rows = bars.map(({ title: name, value, text, isFilled }, i) => {
    const y = 10 + i * ROW;
    const width = Math.max(0.5, (value / most) * WIDTH);
    return joined([
      label(name, { x: LEFT - 10, y: y + 15 }, { 'text-anchor': 'end' }),
      element('rect', {
        x: LEFT,
        y: y + 4,
        width,
        height: ROW - 9,
        fill: isFilled ? look.accent : look.accentTint,
        stroke: look.accent,
        'stroke-dasharray': isFilled ? null : '3 2',
      }),
      label(text, { x: LEFT + width + 6, y: y + 15 }, { fill: look.faintInk }),
    ]);
  });
  return picture({ width: LEFT + WIDTH + 90, height: bars.length * ROW + 20, title }, ...rows);
}
