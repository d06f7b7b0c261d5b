import { discLayers, type DiscLayer, type DiscPlan } from '../../disc/index.ts';
import type { ChannelPlan, HeadPlan } from '../../head/index.ts';
import { element, joined, type Markup } from '../../report/index.ts';
import { svgPen } from '../svg/svgPen.ts';
import { stripShownMm } from './pageData.ts';
import type { PageData, PageReading } from './script/reading.ts';

/** Room round the disc for beams and the head's line, as a share of its radius. [-] */
const MARGIN = 0.12;

/** Corner and size of the picture. [mm] */
interface Frame {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

function frameOf({ spec, strip }: DiscPlan): Frame {
  if (strip) {
    const [width, margin] = [stripShownMm(strip), strip.heightMm * MARGIN];
    return { x: -width / 2, y: -strip.heightMm - margin, width, height: strip.heightMm + 2 * margin };
  }
  const half = (spec.diameterMm / 2) * (1 + MARGIN);
  return { x: -half, y: -half, width: 2 * half, height: 2 * half };
}

/** Where a channel looks, on the picture. [mm] */
function placeOf({ strip }: DiscPlan, { track, radiusMm, angleDeg }: ChannelPlan): { x: number; y: number } {
  if (strip) {
    const { lowMm, highMm } = strip.bands[track]!;
    return { x: angleDeg * strip.mmPerDeg, y: -(lowMm + highMm) / 2 };
  }
  const at = (angleDeg * Math.PI) / 180;
  return { x: radiusMm * Math.sin(at), y: -radiusMm * Math.cos(at) };
}

/** Half of what lies free round a spot: its track's band, and the way to its nearest neighbour. [mm] */
function spotRadiusMm({ disc, channels }: HeadPlan): number {
  const places = channels.map((channel) => placeOf(disc, channel));
  const gaps = places.flatMap((a, i) => places.slice(i + 1).map((b) => Math.hypot(a.x - b.x, a.y - b.y)));
  const largest = (disc.strip?.heightMm ?? disc.spec.diameterMm) / 24;
  return Math.min(largest, ...gaps.map((gap) => gap / 2.1));
}

/** How a layer is filled: with its own ink, or by the style of the page. */
function layerMarkup({ operation, isPattern, fill, draw }: DiscLayer): Markup {
  const { pen, pathData } = svgPen();
  draw(pen);
  const outline = { d: pathData(), 'fill-rule': 'evenodd' };
  if (operation === 'print' || operation === 'copper') return element('path', { ...outline, fill });
  const isBlank = operation === 'cut' && !isPattern;
  const look = isBlank
    ? 'blank'
    : operation === 'engrave'
      ? 'low'
      : operation === 'mark'
        ? 'mark'
        : 'material';
  return element('path', { class: look, ...outline });
}

function discMarkup(plan: DiscPlan, moved: string): Markup {
  const layers = discLayers(plan);
  const isBlank = ({ operation, isPattern }: DiscLayer): boolean => operation === 'cut' && !isPattern;
  const unit = (plan.strip?.heightMm ?? plan.spec.diameterMm / 2) * 0.07;
  const top = plan.strip ? 0 : (-plan.spec.diameterMm / 2) * 1.02;
  return element(
    'g',
    { id: 'disc', transform: moved },
    ...[...layers.filter(isBlank), ...layers.filter((layer) => !isBlank(layer))].map(layerMarkup),
    element('path', {
      class: 'index',
      d: `M0 ${top}l${unit / 2} ${plan.strip ? unit : -unit}h${-unit}z`,
    }),
  );
}

/** A lamp's beam and what its sensor sees, as a ring with the level in it. */
function spotMarkup({ head, data, reading }: StageParts, channel: ChannelPlan, radius: number): Markup {
  const { x, y } = placeOf(head.disc, channel);
  const level = reading.levels[channel.channel]!;
  const look = data.litLevel < 0 ? 'colour' : level === data.litLevel ? 'light' : 'dark';
  return joined([
    element('circle', {
      id: `spot-${channel.channel}`,
      class: `spot ${look}`,
      fill: data.levelColours[level] ?? null,
      cx: x,
      cy: y,
      r: radius,
      'stroke-width': radius / 4,
    }),
    element(
      'text',
      {
        id: `digit-${channel.channel}`,
        class: `digit ${look}`,
        x,
        y: y + radius * 0.44,
        'font-size': radius * 1.25,
        'text-anchor': 'middle',
      },
      String(level),
    ),
  ]);
}

/** What the picture shows. */
export interface StageParts {
  readonly head: HeadPlan;
  readonly data: PageData;
  /** What the sensors see where the page opens. */
  readonly reading: PageReading;
}

/**
 * The disc that turns under its beams, the head standing still; its index mark is the small triangle.
 *
 * @param id - Of the picture; the one with `null` shows what the other one shows, for the poster.
 */
export function stagePicture(parts: StageParts, id: 'stage' | null): Markup {
  const { head, data } = parts;
  const { x, y, width, height } = frameOf(head.disc);
  const viewBox = `${[x, y, width, height].map((side) => Number(side.toFixed(3))).join(' ')}`;
  if (id === null) {
    return element(
      'svg',
      { viewBox, 'aria-hidden': 'true' },
      element('use', { href: '#disc' }),
      element('use', { href: '#spots' }),
    );
  }
  const radius = spotRadiusMm(head);
  const moved = data.strip
    ? `translate(${-data.startDeg * data.strip.mmPerDeg} 0)`
    : `rotate(${-data.startDeg})`;
  return element(
    'svg',
    { id, viewBox, 'aria-hidden': 'true' },
    discMarkup(head.disc, moved),
    element('g', { id: 'spots' }, ...head.channels.map((channel) => spotMarkup(parts, channel, radius))),
  );
}
