import { lightLevel, seenTrack, signalOf, type ChannelPlan, type HeadPlan } from '../../head/index.ts';
import { element, joined, label, look, picture, polyline, type Markup } from '../../report/index.ts';

const LEFT = 84;
const WIDTH = 720;
const ROW = 64;
const GAP = 12;

/** Points a turn; fine enough that a ramp of one pixel shows. */
const POINTS = 1440;

interface Axes {
  x(angleDeg: number): number;
  y(counts: number): number;
}

function trace(head: HeadPlan, { track, angleDeg }: ChannelPlan, { x, y }: Axes): Markup {
  const seen = seenTrack(head.disc, track, head.spec.aperture);
  const signal = signalOf(head.spec.detector, head.levels.resistorOhm, head.circuit.sensorTo, head.board);
  const points = Array.from({ length: POINTS + 1 }, (_, i) => {
    const angle = (i * 360) / POINTS;
    return [x(angle), y(signal.counts(lightLevel(seen, angle + angleDeg), 1, 1))] as const;
  });
  // A point between two equals on its row adds nothing to the line.
  const turns = points.filter((p, i) => !(points[i - 1]?.[1] === p[1] && points[i + 1]?.[1] === p[1]));
  return polyline(turns, { stroke: look.ink, 'stroke-width': 1.3 });
}

function channelRow(head: HeadPlan, channel: ChannelPlan, row: number): Markup {
  const bottom = 10 + row * (ROW + GAP) + ROW;
  const scale = 2 ** head.board.converterBits;
  const axes: Axes = {
    x: (angleDeg) => LEFT + (angleDeg * WIDTH) / 360,
    y: (counts) => bottom - (counts * ROW) / scale,
  };
  const threshold = (counts: number): Markup =>
    element('line', {
      x1: LEFT,
      x2: LEFT + WIDTH,
      y1: axes.y(counts),
      y2: axes.y(counts),
      stroke: look.accent,
      'stroke-dasharray': '5 4',
      'stroke-width': 1,
    });
  const small = { 'text-anchor': 'end', fill: look.faintInk, 'font-size': 10 };
  return joined([
    element('rect', {
      x: LEFT,
      y: bottom - ROW,
      width: WIDTH,
      height: ROW,
      fill: look.light,
      stroke: look.line,
    }),
    label(`channel ${channel.channel}`, { x: LEFT - 8, y: bottom - ROW / 2 + 4 }, { 'text-anchor': 'end' }),
    label(String(scale), { x: LEFT - 8, y: bottom - ROW + 9 }, small),
    label('0', { x: LEFT - 8, y: bottom }, small),
    threshold(head.levels.lowCounts),
    threshold(head.levels.highCounts),
    trace(head, channel, axes),
  ]);
}

/** Counts of every channel over one turn of the disc as drawn, each with its two thresholds. */
export function signalPicture(head: HeadPlan): Markup {
  const rows = head.channels.map((channel, row) => channelRow(head, channel, row));
  const bottom = 10 + rows.length * (ROW + GAP) + 8;
  const ticks = Array.from({ length: 9 }, (_, i) =>
    label(
      `${i * 45}°`,
      { x: LEFT + (i * WIDTH) / 8, y: bottom },
      { 'text-anchor': 'middle', fill: look.faintInk },
    ),
  );
  const title = `Counts of ${rows.length} channels over one turn, each with its lower and upper threshold`;
  return picture({ width: LEFT + WIDTH + 24, height: bottom + 12, title }, ...rows, ...ticks);
}
