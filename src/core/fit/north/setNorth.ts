import { element, label, look, picture, type Markup } from '../../report/index.ts';
import { degToRad, showDegrees, turnBetween, wrapDegrees, type Degrees } from '../../units/index.ts';
import type { TrueBearing } from './trueBearing.ts';

/** One north offset with its day, kept in the file for good. */
export interface NorthEntry {
  /** ISO 8601, UTC: from when on it holds. */
  readonly since: string;
  /** Value of `site.northOffsetDeg` from then on. [deg], [0, 360) */
  readonly offsetDeg: Degrees;
  readonly sigmaDeg: Degrees;
  /** How it was found, in words. */
  readonly by: string;
}

/** How to set north, in two ways that come to the same. */
export interface NorthAdvice {
  /** What the display must show while the vane points at the target. [deg] */
  readonly showDeg: Degrees;
  readonly sigmaDeg: Degrees;
  /** The one instruction. */
  readonly instruction: string;
  /** The same by software: the new offset, where it is told what the display shows now; else `null`. */
  readonly entry: NorthEntry | null;
  readonly cautions: readonly string[];
  readonly picture: Markup;
}

/** Cautions of every work at a mast. */
const MAST_CAUTIONS = [
  'Keep away from power lines by more than the length of mast and ladder together, and come down when thunder can be heard.',
  'Work on a mast in company and by the rules of your place.',
];

/**
 * How to set north: no signs to get wrong, since the answer is what the display must show.
 *
 * @param bearing - What the vane is made to point at.
 * @param now - What the display shows now with the vane pointing there, the offset it uses, and the day; `null` when
 * the mast is to be turned instead. [deg]
 * @source derived: a heading is the offset plus what the disc adds, so the offset grows by what the display lacks.
 * @check src/core/fit/north/north.test.ts
 */
export function setNorth(
  bearing: TrueBearing,
  now: { readonly showsDeg: Degrees; readonly offsetDeg: Degrees; readonly at: string } | null,
): NorthAdvice {
  const showDeg = wrapDegrees(Number(bearing.bearingDeg.toFixed(1)));
  const lacks = now ? turnBetween(now.showsDeg, bearing.bearingDeg) : 0;
  const entry: NorthEntry | null = now && {
    since: now.at,
    offsetDeg: wrapDegrees(Number((now.offsetDeg + lacks).toFixed(2))),
    sigmaDeg: Number(bearing.sigmaDeg.toFixed(2)),
    by: `display showed ${showDegrees(now.showsDeg)} where ${bearing.target} stands at ${showDegrees(showDeg)}`,
  };
  return {
    showDeg,
    sigmaDeg: bearing.sigmaDeg,
    instruction:
      `Hold the vane so that it points at ${bearing.target}, and turn the mast until the display shows ${showDegrees(showDeg)}.` +
      (entry ? ` Or leave the mast and set site.northOffsetDeg to ${showDegrees(entry.offsetDeg)}.` : ''),
    entry,
    cautions: [...bearing.cautions, ...MAST_CAUTIONS],
    picture: northPicture(bearing, showDeg, now?.showsDeg ?? null),
  };
}

const SIZE = 300;
const RIM = 104;

const onRing = (deg: Degrees, radius: number): [number, number] => [
  radius * Math.sin(degToRad(deg)),
  -radius * Math.cos(degToRad(deg)),
];

function northPicture({ target }: TrueBearing, showDeg: Degrees, showsDeg: Degrees | null): Markup {
  const [tx, ty] = onRing(showDeg, RIM);
  const [bx, by] = onRing(showDeg + 180, 60);
  const half = SIZE / 2;
  const points = (['N', 'E', 'S', 'W'] as const).map((point, i) => {
    const [x, y] = onRing(i * 90, RIM + 18);
    return label(point, { x: x - 4, y: y + 4 }, { 'font-weight': 'bold' });
  });
  const wrong =
    showsDeg === null
      ? []
      : [
          element('line', {
            x1: 0,
            y1: 0,
            x2: onRing(showsDeg, RIM)[0],
            y2: onRing(showsDeg, RIM)[1],
            stroke: look.faintInk,
            'stroke-dasharray': '4 4',
          }),
        ];
  return picture(
    {
      width: SIZE,
      height: SIZE,
      origin: [-half, -half],
      title: `The vane points at ${target}: the display must show ${showDegrees(showDeg)}.`,
    },
    element('circle', { r: RIM, fill: look.light, stroke: look.line }),
    ...points,
    ...wrong,
    element('line', { x1: bx, y1: by, x2: tx, y2: ty, stroke: look.accent, 'stroke-width': 4 }),
    element('circle', { cx: tx, cy: ty, r: 6, fill: look.accent }),
    label(`shows ${showDegrees(showDeg)}`, { x: -36, y: half - 10 }, { 'font-weight': 'bold' }),
  );
}
