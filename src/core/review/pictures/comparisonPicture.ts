import {
  element,
  joined,
  label,
  leftAxis,
  look,
  picture,
  plotFrame,
  ticksBetween,
  type Markup,
  type PlotBox,
} from '../../report/index.ts';
import { showNumber } from '../../units/index.ts';
import type { Comparison } from '../figures/comparison.ts';

const BOX: PlotBox = { left: 64, top: 54, width: 640, height: 220 };

/** Shares of both records side by side, sector by sector: filled is this one, outlined the other. */
export function comparisonPicture({ sectors, against }: Comparison): Markup {
  const most = 1.1 * Math.max(0.01, ...sectors.flatMap(({ share, otherShare }) => [share, otherShare]));
  const step = BOX.width / sectors.length;
  const y = (share: number): number => BOX.top + BOX.height * (1 - share / most);
  const every = Math.ceil(sectors.length / 16);
  const bar = (share: number, x: number, isFilled: boolean): Markup =>
    element('rect', {
      x,
      y: y(share),
      width: 0.38 * step,
      height: BOX.top + BOX.height - y(share),
      fill: isFilled ? look.material : look.light,
      stroke: isFilled ? look.material : look.accent,
      'stroke-dasharray': isFilled ? null : '3 2',
    });
  const bars = sectors.map(({ centreDeg, share, otherShare, isApart }, i) => {
    const x = BOX.left + i * step;
    const top = Math.min(y(share), y(otherShare));
    return joined([
      bar(share, x + 0.1 * step, true),
      bar(otherShare, x + 0.52 * step, false),
      ...(isApart
        ? [label('*', { x: x + step / 2, y: top - 2 }, { 'text-anchor': 'middle', fill: look.accent })]
        : []),
      ...(i % every === 0
        ? [
            label(
              `${showNumber(centreDeg, 1)}°`,
              { x: x + step / 2, y: BOX.top + BOX.height + 16 },
              { 'text-anchor': 'middle', 'font-size': 10, fill: look.faintInk },
            ),
          ]
        : []),
    ]);
  });
  return picture(
    { width: 740, height: 320, title: `Share of the time by sector, beside ${against}` },
    label(`filled: this review; outlined: ${against}`, { x: BOX.left, y: 20 }),
    label('* the 95 % intervals lie apart', { x: BOX.left, y: 38 }, { fill: look.accent }),
    plotFrame(BOX),
    ...bars,
    leftAxis(BOX, ticksBetween(0, 100 * most, 5), (tick) => y(tick / 100), ' %'),
    label('where the wind comes from', { x: BOX.left + BOX.width / 2, y: 312 }, { 'text-anchor': 'middle' }),
  );
}
