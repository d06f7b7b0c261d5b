import { drawDisc, sheetPoint } from '../../disc/index.ts';
import type { ChannelPlan, HeadPlan } from '../../head/index.ts';
import { element, joined, label, look, picture, polyline, type Markup } from '../../report/index.ts';
import { svgPen } from '../svg/svgPen.ts';

/** Room round the disc for the words. [mm] */
const MARGIN_MM = 9;

/** Place on the picture, whose y goes down. */
function at(angleDeg: number, radiusMm: number): { x: number; y: number } {
  const { xMm, yMm } = sheetPoint(angleDeg, radiusMm);
  return { x: xMm, y: -yMm };
}

/** Size of a channel's spot along its track. [mm] */
function spotMm({ aperture }: HeadPlan['spec']): number {
  if (aperture.shape === 'slit') return aperture.widthMm;
  return aperture.shape === 'round' ? aperture.diameterMm : 2 * aperture.radiusMm;
}

function channelMark({ channel, radiusMm, angleDeg }: ChannelPlan, ringMm: number): Markup {
  const { x, y } = at(angleDeg, radiusMm);
  return joined([
    element('circle', {
      cx: x,
      cy: y,
      r: ringMm,
      fill: look.accent,
      stroke: look.paper,
      'stroke-width': ringMm / 6,
    }),
    label(
      String(channel),
      { x, y: y + ringMm * 0.42 },
      { 'text-anchor': 'middle', fill: look.paper, 'font-size': ringMm * 1.2, 'font-weight': 700 },
    ),
  ]);
}

/** An arrow along the rim that shows which way the disc angle grows. */
function senseArrow(radiusMm: number, size: number): Markup {
  const from = at(14, radiusMm);
  const to = at(38, radiusMm);
  const tip = at(42, radiusMm);
  const sides = [at(38, radiusMm - size * 0.35), at(38, radiusMm + size * 0.35)];
  const head = [tip, ...sides].map(({ x, y }) => `${x.toFixed(3)},${y.toFixed(3)}`).join(' ');
  const arc = `M${from.x.toFixed(3)} ${from.y.toFixed(3)}A${radiusMm} ${radiusMm} 0 0 1 ${to.x.toFixed(3)} ${to.y.toFixed(3)}`;
  return joined([
    element('path', { d: arc, fill: 'none', stroke: look.accent, 'stroke-width': size * 0.14 }),
    element('polygon', { points: head, fill: look.accent }),
  ]);
}

/**
 * The disc with its sensors, as a maker sees it: patterned face towards them, index mark up, the head at disc angle 0.
 *
 * @param head - Plan of the head; its disc is drawn.
 */
export function discPicture(head: HeadPlan): Markup {
  const { disc, channels, spec } = head;
  const { pen, pathData } = svgPen();
  drawDisc(disc, pen);
  const radius = disc.spec.diameterMm / 2;
  const half = radius + (MARGIN_MM * radius) / 42;
  const unit = radius / 42;
  const narrowest = Math.min(
    ...disc.tracks.map(({ innerRadiusMm, outerRadiusMm }) => outerRadiusMm - innerRadiusMm),
  );
  const ring = Math.min(narrowest / 2, Math.max(spotMm(spec), 2.6 * unit));
  const reach = [at(0, Math.min(...channels.map(({ radiusMm }) => radiusMm))), at(0, radius + 4 * unit)];
  const isOneLine = channels.every(({ angleDeg }) => angleDeg === 0);
  const title = `${disc.code.family} disc of ${disc.code.positions} positions on ${disc.tracks.length} tracks, with its ${channels.length} sensors`;
  return picture(
    { width: 2 * half, height: 2 * half, origin: [-half, -half], title },
    element('path', { d: pathData(), fill: look.material, 'fill-rule': 'evenodd' }),
    ...(isOneLine
      ? [
          polyline(
            reach.map(({ x, y }) => [x, y] as const),
            {
              stroke: look.accent,
              'stroke-width': 0.4 * unit,
              'stroke-dasharray': `${1.6 * unit} ${1.2 * unit}`,
            },
          ),
        ]
      : []),
    ...channels.map((channel) => channelMark(channel, ring)),
    label('index', at(-4, radius + 3.4 * unit), {
      'text-anchor': 'end',
      'font-size': 3.2 * unit,
      fill: look.faintInk,
    }),
    senseArrow(radius + 3.6 * unit, 5 * unit),
    label(
      'disc angle grows',
      { x: half - 2 * unit, y: 5 * unit - half },
      { 'text-anchor': 'end', 'font-size': 3.2 * unit, fill: look.faintInk },
    ),
  );
}
