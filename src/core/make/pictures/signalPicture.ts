import {
  lightLevel,
  markShares,
  seenAsDrawn,
  seenMarks,
  signalOf,
  type ChannelPlan,
  type HeadPlan,
} from '../../head/index.ts';
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

/** Counts of a channel at an angle: one line, or red, green and blue over marks of three colours. */
function countsAt(head: HeadPlan, { track, angleDeg }: ChannelPlan): ((angleDeg: number) => number)[] {
  const { disc, spec, marks, levels, circuit, board } = head;
  const signal = signalOf(spec.detector, levels.resistorOhm, circuit.sensorTo, board);
  if (marks === null) {
    const seen = seenAsDrawn(disc, track, spec);
    return [(angle) => signal.counts(lightLevel(seen, angle + angleDeg), 1, 1)];
  }
  const seen = seenMarks(disc, track, spec.aperture, spec.penumbra ?? null);
  const blend = (values: readonly number[]) => (angle: number) =>
    markShares(seen, angle + angleDeg).reduce((sum, share, level) => sum + share * values[level]!, 0);
  if (marks.kind === 'greys') return [blend(marks.counts)];
  return [0, 1, 2].map((colour) => blend(marks.marksRgbCounts.map((rgb) => rgb[colour]!)));
}

/** Dashes that tell red, green and blue counts apart without colour. */
const DASHES = [null, '6 3', '2 3'];

function trace(head: HeadPlan, channel: ChannelPlan, { x, y }: Axes): Markup {
  const lines = countsAt(head, channel).map((counts, line) => {
    const points = Array.from({ length: POINTS + 1 }, (_, i) => {
      const angle = (i * 360) / POINTS;
      return [x(angle), y(counts(angle))] as const;
    });
    // A point between two equals on its row adds nothing to the line.
    const turns = points.filter((p, i) => !(points[i - 1]?.[1] === p[1] && points[i + 1]?.[1] === p[1]));
    const dash = DASHES[line]!;
    return polyline(turns, {
      stroke: look.ink,
      'stroke-width': 1.3,
      ...(dash ? { 'stroke-dasharray': dash } : {}),
    });
  });
  return joined(lines);
}

/** Counts at which a channel changes, lower and upper of each pair; colours have none of their own. */
function thresholdsOf({ marks, levels }: HeadPlan): number[] {
  if (marks?.kind === 'colours') return [];
  const pairs = marks?.kind === 'greys' ? marks.thresholds : [levels];
  return pairs.flatMap(({ lowCounts, highCounts }) => [lowCounts, highCounts]);
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
    ...thresholdsOf(head).map(threshold),
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
