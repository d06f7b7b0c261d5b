import { element, joined, label, look, picture, ticksBetween, type Markup } from '../../report/index.ts';
import { degToRad, showNumber } from '../../units/index.ts';
import { compassPoints, type Petal, type Rose } from '../../wind/index.ts';
import { shadeOf } from './shades.ts';

/** Radii of the hole for the calms and of the outermost ring, and the middle of the drawing. [user units] */
const HOLE = 34;
const RIM = 220;
const MIDDLE = { x: 270, y: 262 };
/** Where the words beside the rose begin. [user units] */
const WORDS_X = 545;

const percent = (share: number, places = 1): string => `${showNumber(100 * share, places)} %`;

function at(radius: number, headingDeg: number): { x: number; y: number } {
  const turn = degToRad(headingDeg);
  return { x: MIDDLE.x + radius * Math.sin(turn), y: MIDDLE.y - radius * Math.cos(turn) };
}

/** Outline of a piece of a ring. [user units], [deg] */
function ringPiece(inner: number, outer: number, fromDeg: number, toDeg: number): string {
  const text = (radius: number, deg: number): string => {
    const { x, y } = at(radius, deg);
    return `${Number(x.toFixed(2))} ${Number(y.toFixed(2))}`;
  };
  const isLong = toDeg - fromDeg > 180 ? 1 : 0;
  return (
    `M${text(inner, fromDeg)}L${text(outer, fromDeg)}A${outer} ${outer} 0 ${isLong} 1 ${text(outer, toDeg)}` +
    `L${text(inner, toDeg)}A${inner} ${inner} 0 ${isLong} 0 ${text(inner, fromDeg)}Z`
  );
}

/** Radius of a share; the share is the length of the petal beyond the hole. */
type Scale = (share: number) => number;

function petalPieces(petal: Petal, widthDeg: number, radius: Scale): Markup[] {
  const [from, to] = [petal.centreDeg - 0.42 * widthDeg, petal.centreDeg + 0.42 * widthDeg];
  let below = 0;
  return petal.byClass.flatMap((share, speedClass) => {
    const [inner, outer] = [radius(below), radius(below + share)];
    below += share;
    if (outer - inner < 0.05) return [];
    return [
      element('path', {
        d: ringPiece(inner, Number(outer.toFixed(2)), from, to),
        fill: shadeOf(speedClass, petal.byClass.length),
        stroke: look.ink,
        'stroke-width': 0.5,
      }),
    ];
  });
}

/** The 95 % interval of a petal, as a line with ends. */
function whisker({ centreDeg, interval }: Petal, radius: Scale): Markup[] {
  if (!interval) return [];
  const [low, high] = [radius(interval.low), Math.min(radius(interval.high), RIM + 8)];
  const line = (from: { x: number; y: number }, to: { x: number; y: number }): Markup =>
    element('line', {
      x1: from.x,
      y1: from.y,
      x2: to.x,
      y2: to.y,
      stroke: look.accent,
      'stroke-width': 1.4,
    });
  const across = (r: number): Markup => {
    const half = (180 / Math.PI) * (3.5 / Math.max(r, 12));
    return line(at(r, centreDeg - half), at(r, centreDeg + half));
  };
  return [line(at(low, centreDeg), at(high, centreDeg)), across(low), across(high)];
}

function rings(most: number, radius: Scale): Markup[] {
  return ticksBetween(0, most, 5)
    .filter((share) => share > 0)
    .map((share) => {
      const place = at(radius(share), 101.25);
      return joined([
        element('circle', { cx: MIDDLE.x, cy: MIDDLE.y, r: radius(share), fill: 'none', stroke: look.line }),
        label(percent(share), { x: place.x + 2, y: place.y }, { 'font-size': 10, fill: look.faintInk }),
      ]);
    });
}

function pointNames(): Markup[] {
  return compassPoints(8).map((name, i) => {
    const { x, y } = at(RIM + 18, 45 * i);
    return label(
      name,
      { x, y: y + 4 },
      { 'text-anchor': 'middle', 'font-weight': i % 2 === 0 ? 'bold' : 'normal' },
    );
  });
}

function classNames(bounds: readonly number[]): string[] {
  return [0, ...bounds].map((from, i) => {
    const to = bounds[i];
    if (to === undefined) return `${from} m/s and more`;
    return i === 0 ? `below ${to} m/s` : `${from} to ${to} m/s`;
  });
}

function legend({ layout, petals, calm }: Rose): Markup[] {
  const bounds = layout.speedBoundsMPerS;
  const rows: Markup[] = [];
  let y = 60;
  const row = (text: string, fill: string, dash: string | null): void => {
    rows.push(
      element('rect', {
        x: WORDS_X,
        y: y - 11,
        width: 18,
        height: 13,
        fill,
        stroke: look.ink,
        'stroke-width': 0.5,
        'stroke-dasharray': dash,
      }),
      label(text, { x: WORDS_X + 26, y }),
    );
    y += 20;
  };
  if (calm)
    row(
      `calm (below ${showNumber(layout.calmBelowMPerS, 2)} m/s): ${percent(calm.share)}`,
      look.light,
      '3 2',
    );
  if (bounds) {
    classNames(bounds).forEach((name, i) => {
      const share = petals.reduce((sum, { byClass }) => sum + byClass[i]!, 0);
      row(`${name}: ${percent(share)}`, shadeOf(i, bounds.length + 1), null);
    });
  } else row('any speed: the record holds none', shadeOf(0, 1), null);
  return rows;
}

/**
 * The rose: length of a petal is its share of the time, shades are speed classes, the middle holds the calms.
 *
 * @param rose - As `roseOf` gives it.
 * @param words - What must stand on it: each a short line.
 */
export function rosePicture(rose: Rose, words: readonly string[]): Markup {
  const { petals, calm } = rose;
  const most = Math.max(
    0.01,
    ...petals.map(({ share, interval }) => Math.min(interval?.high ?? share, 1.6 * share)),
  );
  const radius: Scale = (share) => HOLE + (share / most) * (RIM - HOLE);
  const width = 360 / petals.length;
  const lines = words.map((text, i) =>
    label(text, { x: WORDS_X, y: 262 + 19 * i }, { 'font-size': 11, fill: look.faintInk }),
  );
  return picture(
    { width: 860, height: 520, title: 'Where the wind comes from, how often and how strong' },
    ...rings(most, radius),
    ...petals.flatMap((petal) => petalPieces(petal, width, radius)),
    ...petals.flatMap((petal) => whisker(petal, radius)),
    element('circle', {
      cx: MIDDLE.x,
      cy: MIDDLE.y,
      r: HOLE,
      fill: look.light,
      stroke: look.ink,
      'stroke-width': 0.5,
      'stroke-dasharray': '3 2',
    }),
    label('calm', { x: MIDDLE.x, y: MIDDLE.y - 3 }, { 'text-anchor': 'middle', 'font-size': 11 }),
    label(
      calm ? percent(calm.share) : 'not known',
      { x: MIDDLE.x, y: MIDDLE.y + 12 },
      { 'text-anchor': 'middle', 'font-size': 11 },
    ),
    ...pointNames(),
    label('Share of the time', { x: WORDS_X, y: 34 }, { 'font-weight': 'bold' }),
    ...legend(rose),
    ...lines,
  );
}
