import { element, label, look, picture, type Markup } from '../../report/index.ts';
import type { DayCoverage } from '../figures/coverage.ts';
import { grouped } from '../figures/grouped.ts';

const LEFT = 76;
const TOP = 34;
const CELL = 20;
const ROW = 26;

/** Height of a cell that is filled as far as the day was covered. [user units] */
const HIGH = 20;

/**
 * Calendar of coverage: a row a month, a cell a day, filled from below as far as the day has both speed and direction.
 *
 * @param days - Every day, oldest first.
 * @param part - Which share is shown.
 */
export function calendarPicture(days: readonly DayCoverage[], part: 'both' | 'heading'): Markup {
  const months = [...grouped(days, ({ startMs }) => new Date(startMs).toISOString().slice(0, 7))];
  const numbers = [1, 5, 10, 15, 20, 25, 30].map((day) =>
    label(
      String(day),
      { x: LEFT + (day - 0.5) * CELL, y: TOP - 8 },
      { 'text-anchor': 'middle', 'font-size': 10, fill: look.faintInk },
    ),
  );
  const rows = months.flatMap(([name, own], row) => {
    const y = TOP + row * ROW;
    return [
      label(name, { x: LEFT - 10, y: y + 15 }, { 'text-anchor': 'end' }),
      ...own.flatMap((day) => {
        const x = LEFT + (new Date(day.startMs).getUTCDate() - 1) * CELL;
        const share = Math.min(1, day[part]);
        return [
          element('rect', {
            x: x + 1,
            y,
            width: CELL - 2,
            height: HIGH,
            fill: look.light,
            stroke: share < 0.9 ? look.accent : look.line,
            'stroke-dasharray': share < 0.9 ? '2 2' : null,
          }),
          element('rect', {
            x: x + 2,
            y: y + HIGH * (1 - share),
            width: CELL - 4,
            height: HIGH * share,
            fill: look.material,
          }),
        ];
      }),
    ];
  });
  const what = part === 'both' ? 'speed and direction' : 'direction';
  const height = TOP + months.length * ROW + 30;
  return picture(
    { width: LEFT + 31 * CELL + 20, height, title: `Coverage day by day: samples with ${what}` },
    ...numbers,
    ...rows,
    label(
      `filled as far as the day has ${what}; a dashed frame marks less than 90 %`,
      { x: LEFT, y: height - 10 },
      { 'font-size': 11, fill: look.faintInk },
    ),
  );
}
