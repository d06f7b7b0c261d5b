import { look } from '../look.ts';
import { element, type Markup } from '../markup.ts';
import { label, picture, polyline } from '../picture.ts';
import { bottomAxis, leftAxis, plotFrame, ticksBetween, type PlotBox } from './axis.ts';

/** A stretch of the turn over which one position shows; `null` where none does. */
export interface ShownStretch {
  /** `toDeg` may pass 360. [deg] */
  readonly fromDeg: number;
  readonly toDeg: number;
  readonly position: number | null;
}

const BOX: PlotBox = { left: 60, top: 24, width: 720, height: 200 };
/** Half of the turn: what is farther off than this is off the other way. [deg] */
const HALF = 180;

/**
 * Error of the shown direction over one turn, saw-tooth by saw-tooth, with the largest error that is accepted.
 *
 * @param turn - Stretches of one way round, positions of the disc, and the accuracy asked. [deg], [-], [deg]
 */
export function turnErrorPicture(turn: {
  readonly stretches: readonly ShownStretch[];
  readonly positions: number;
  readonly accuracyDeg: number;
}): Markup {
  const { stretches, positions, accuracyDeg } = turn;
  const teeth = teethOf(stretches, positions);
  const worst = Math.max(0, ...teeth.flatMap(([, , first, last]) => [Math.abs(first), Math.abs(last)]));
  const most = Math.min(HALF, 1.1 * Math.max(accuracyDeg, worst));
  const x = (angle: number): number => BOX.left + (angle / 360) * BOX.width;
  const y = (error: number): number =>
    BOX.top + (BOX.height * (1 - Math.max(-1, Math.min(1, error / most)))) / 2;
  const limits = [accuracyDeg, -accuracyDeg].filter((limit) => Math.abs(limit) <= most);
  const title = `Error of the direction shown over one turn, at most ${Number(worst.toFixed(2))}°`;
  return picture(
    { width: BOX.left + BOX.width + 30, height: BOX.top + BOX.height + 44, title },
    plotFrame(BOX),
    element('line', { x1: x(0), x2: x(360), y1: y(0), y2: y(0), stroke: look.line }),
    ...limits.map((limit) =>
      element('line', {
        x1: x(0),
        x2: x(360),
        y1: y(limit),
        y2: y(limit),
        stroke: look.accent,
        'stroke-dasharray': '5 4',
      }),
    ),
    label(
      `accepted: ±${Number(accuracyDeg.toFixed(2))}°`,
      { x: BOX.left + 6, y: BOX.top - 8 },
      { fill: look.accent },
    ),
    ...teeth.map(([from, to, a, b]) =>
      polyline(
        [
          [x(from), y(a)],
          [x(to), y(b)],
        ],
        { stroke: look.ink, 'stroke-width': 1.3 },
      ),
    ),
    ...unreadPieces(stretches).map(([from, to]) =>
      element('rect', {
        x: x(from),
        y: BOX.top,
        width: Math.max(0.5, x(to) - x(from)),
        height: BOX.height,
        fill: look.accentTint,
      }),
    ),
    bottomAxis(BOX, [0, 45, 90, 135, 180, 225, 270, 315, 360], x, {
      unit: '°',
      title: 'where the disc stands',
    }),
    leftAxis(BOX, ticksBetween(-most, most, 7), y, '°'),
  );
}

/** One tooth: where it begins and ends, and the error there. [deg] */
type Tooth = readonly [fromDeg: number, toDeg: number, first: number, last: number];

function teethOf(stretches: readonly ShownStretch[], positions: number): Tooth[] {
  const errorAt = (position: number, angle: number): number => {
    const apart = ((position + 0.5) * 360) / positions - angle;
    return apart - 360 * Math.round(apart / 360);
  };
  return stretches.flatMap(({ fromDeg, toDeg, position }) => {
    if (position === null) return [];
    return pieces(fromDeg, toDeg).map(([from, to]): Tooth => {
      const first = errorAt(position, from + 1e-9);
      return [from, to, first, first - (to - from)];
    });
  });
}

/** Where no position shows. [deg] */
function unreadPieces(stretches: readonly ShownStretch[]): [number, number][] {
  return stretches
    .filter(({ position }) => position === null)
    .flatMap(({ fromDeg, toDeg }) => pieces(fromDeg, toDeg));
}

/** A stretch cut where it passes 360. [deg] */
function pieces(fromDeg: number, toDeg: number): [number, number][] {
  if (toDeg <= 360) return [[fromDeg, toDeg]];
  return [
    [fromDeg, 360],
    [0, toDeg - 360],
  ];
}
