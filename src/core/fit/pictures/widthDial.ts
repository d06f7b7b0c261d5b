import { element, label, look, picture, type Markup } from '../../report/index.ts';
import { degToRad } from '../../units/index.ts';
import type { FittedDisc } from '../fit.ts';

const SIZE = 340;
const RIM = 128;
/** Share of a step that a bar of full length stands for. [-] */
const FULL = 0.5;

/** Place on the dial, clockwise from the top. */
const at = (deg: number, radius: number): [number, number] => [
  radius * Math.sin(degToRad(deg)),
  -radius * Math.cos(degToRad(deg)),
];

/**
 * Width of every word round the dial: outside the ring wider than a step, inside narrower; the bore's arrow in the middle.
 */
export function widthDial({ positions, bore }: FittedDisc): Markup {
  const bars = positions.map(({ centreDeg, halfWidthDeg, widthShare, seen }) => {
    const over = Math.max(-1, Math.min(1.2, (widthShare - 1) / FULL));
    const outer = RIM + 34 * over;
    const half = Math.max(0.3, 0.85 * halfWidthDeg);
    const corners = [
      at(centreDeg - half, RIM),
      at(centreDeg + half, RIM),
      at(centreDeg + half, outer),
      at(centreDeg - half, outer),
    ];
    const points = corners.map(([x, y]) => `${x.toFixed(1)},${y.toFixed(1)}`).join(' ');
    return element('polygon', {
      points,
      fill: seen ? (over > 0 ? look.material : look.accent) : look.accentTint,
    });
  });
  const isClear = bore.offMm.value > 2 * bore.offMm.sigma;
  const [x, y] = at(bore.patternTowardsDeg + 180, 70);
  const arrow = isClear
    ? [
        element('line', { x1: 0, y1: 0, x2: x, y2: y, stroke: look.accent, 'stroke-width': 3 }),
        element('circle', { cx: x, cy: y, r: 5, fill: look.accent }),
        label(
          `bore ${bore.offMm.value.toFixed(2)} mm`,
          { x: x * 0.4 - 34, y: y * 0.4 + 16 },
          { fill: look.accent },
        ),
      ]
    : [];
  const half = SIZE / 2;
  return picture(
    {
      width: SIZE,
      height: SIZE,
      origin: [-half, -half],
      title: 'Width of every word round the disc: bars outward are wider than a step, bars inward narrower.',
    },
    element('circle', { r: RIM, fill: 'none', stroke: look.line }),
    ...bars,
    element('circle', { r: 3, fill: look.ink }),
    ...arrow,
    ...[0, 90, 180, 270].map((deg) => {
      const [tx, ty] = at(deg, 100);
      return label(`${deg}°`, { x: tx - 10, y: ty + 4 }, { fill: look.faintInk });
    }),
  );
}
