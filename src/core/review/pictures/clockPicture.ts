import {
  bottomAxis,
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
import type { ClockFigures } from '../figures/byClock.ts';

const SPEED: PlotBox = { left: 64, top: 34, width: 640, height: 150 };
const HEADING: PlotBox = { left: 64, top: 224, width: 640, height: 170 };

/** What stands along the bottom. */
export interface ClockAxis {
  readonly title: string;
  readonly first: number;
  readonly last: number;
}

const upright = (x: number, y1: number, y2: number): Markup =>
  element('line', { x1: x, x2: x, y1, y2, stroke: look.accent, 'stroke-width': 1.4 });

function speedMarks(figures: readonly ClockFigures[], x: (of: number) => number, most: number): Markup[] {
  const y = (speed: number): number => SPEED.top + SPEED.height * (1 - Math.max(0, speed) / most);
  return figures.flatMap(({ of, speed }) => {
    if (!speed) return [];
    const { mean, interval } = speed;
    return [
      element('circle', { cx: x(of), cy: y(mean), r: 4, fill: look.ink }),
      ...(interval ? [upright(x(of), y(Math.min(most, interval.high)), y(interval.low))] : []),
    ];
  });
}

function headingMarks(figures: readonly ClockFigures[], x: (of: number) => number): Markup[] {
  const y = (deg: number): number => HEADING.top + HEADING.height * (1 - deg / 360);
  return figures.flatMap(({ of, headingDeg, headingWithinDeg }) => {
    if (headingDeg === null) return [];
    const within = headingWithinDeg ?? 0;
    const [low, high] = [headingDeg - within, headingDeg + within];
    // What goes over the top comes in again from below.
    const pieces = [
      [Math.max(0, low), Math.min(360, high)],
      ...(low < 0 ? [[low + 360, 360]] : []),
      ...(high > 360 ? [[0, high - 360]] : []),
    ];
    return [
      ...(within > 0 ? pieces.map(([from, to]) => upright(x(of), y(to!), y(from!))) : []),
      element('circle', { cx: x(of), cy: y(headingDeg), r: 4, fill: look.ink }),
    ];
  });
}

/**
 * Mean speed and mean heading by hour of the day or by month, each with its 95 % interval.
 *
 * @param figures - As `byClock` gives them.
 * @param axis - What stands along the bottom.
 */
export function clockPicture(figures: readonly ClockFigures[], { title, first, last }: ClockAxis): Markup {
  const highs = figures.map(({ speed }) => Math.min(speed?.interval?.high ?? 0, 2 * (speed?.mean ?? 0)));
  const most = 1.1 * Math.max(1, ...figures.map(({ speed }) => speed?.mean ?? 0), ...highs);
  const step = SPEED.width / (last - first + 1);
  const x = (of: number): number => SPEED.left + (of - first + 0.5) * step;
  const ticks = Array.from({ length: last - first + 1 }, (_, i) => first + i).filter(
    (of) => last - first < 13 || of % 3 === 0,
  );
  const speedY = (speed: number): number => SPEED.top + SPEED.height * (1 - speed / most);
  const headingY = (deg: number): number => HEADING.top + HEADING.height * (1 - deg / 360);
  const grid = [90, 180, 270].map((deg) =>
    element('line', {
      x1: HEADING.left,
      x2: HEADING.left + HEADING.width,
      y1: headingY(deg),
      y2: headingY(deg),
      stroke: look.line,
    }),
  );
  return picture(
    { width: 740, height: 440, title: `Mean speed and mean heading by ${title}` },
    label('mean speed [m/s], all samples', { x: SPEED.left, y: SPEED.top - 10 }),
    plotFrame(SPEED),
    leftAxis(SPEED, ticksBetween(0, most, 5), speedY, ''),
    label('mean heading, where the wind comes from', { x: HEADING.left, y: HEADING.top - 10 }),
    plotFrame(HEADING),
    joined(grid),
    leftAxis(HEADING, [0, 90, 180, 270, 360], headingY, '°'),
    ...speedMarks(figures, x, most),
    ...headingMarks(figures, x),
    bottomAxis(HEADING, ticks, x, { unit: '', title }),
  );
}
