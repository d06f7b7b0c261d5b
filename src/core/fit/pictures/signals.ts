import { label, look, picture, polyline, element, type Markup } from '../../report/index.ts';
import type { Fit } from '../fit.ts';

const WIDTH = 720;
const LEFT = 96;
const ROW = 46;
/** Points a line at most: more than a screen shows. */
const POINTS_MOST = 700;

/** Samples of a column thinned to what a screen shows, lowest and highest of each piece kept. */
function thinned(values: readonly number[]): [number, number][] {
  const piece = Math.max(1, Math.ceil((2 * values.length) / POINTS_MOST));
  const points: [number, number][] = [];
  for (let from = 0; from < values.length; from += piece) {
    const some = values.slice(from, from + piece);
    const [low, high] = [Math.min(...some), Math.max(...some)];
    points.push([from, some[0]! <= some.at(-1)! ? low : high]);
    if (high !== low) points.push([from + piece / 2, some[0]! <= some.at(-1)! ? high : low]);
  }
  return points;
}

/**
 * Signals of every recorded column over time, with their thresholds.
 *
 * @param marked - Channels that the picture is about; their lines are drawn in the accent and bolder. [index]
 */
export function signalsPicture(
  { recording, columns, channels }: Fit,
  marked: readonly number[] = [],
): Markup {
  const height = ROW * columns.length + 30;
  const samples = recording.stretches.reduce((sum, { rows }) => sum + rows.length, 0);
  const x = (sample: number): number => LEFT + ((WIDTH - LEFT - 12) * sample) / Math.max(1, samples - 1);
  const rows = columns.flatMap((column, row): Markup[] => {
    const values = recording.stretches.flatMap((stretch) =>
      stretch.rows.map((cells) => cells[column.column]!),
    );
    const [low, high] = [Math.min(column.lowPlateau, ...values), Math.max(column.highPlateau, ...values)];
    const top = 8 + row * ROW;
    const y = (counts: number): number =>
      top + ROW - 12 - ((ROW - 18) * (counts - low)) / Math.max(1, high - low);
    const channel = channels.find((one) => one.column === column.column);
    const isMarked = channel !== undefined && marked.includes(channel.channel);
    const threshold = y((column.lowCounts + column.highCounts) / 2);
    const name = channel ? `channel ${channel.channel}` : column.name;
    return [
      label(name, { x: 8, y: top + ROW / 2 - 4 }, isMarked ? { 'font-weight': 'bold' } : {}),
      label(column.verdict, { x: 8, y: top + ROW / 2 + 10 }, { fill: look.faintInk, 'font-size': 10 }),
      element('line', {
        x1: LEFT,
        x2: WIDTH - 12,
        y1: threshold,
        y2: threshold,
        stroke: look.faintInk,
        'stroke-dasharray': '3 4',
      }),
      polyline(
        thinned(values).map(([sample, counts]) => [x(sample), y(counts)] as const),
        {
          stroke: isMarked ? look.accent : look.ink,
          'stroke-width': isMarked ? 2 : 1,
        },
      ),
    ];
  });
  return picture(
    {
      width: WIDTH,
      height,
      title: 'Counts of every recorded column over time, each with its threshold dashed.',
    },
    ...rows,
    label('time →', { x: LEFT, y: height - 8 }, { fill: look.faintInk }),
  );
}
