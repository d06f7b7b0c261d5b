import { element, label, look, picture, type Markup } from '../../report/index.ts';
import type { FittedChannel, FittedDisc } from '../fit.ts';

const WIDTH = 720;
const LEFT = 96;
const ROW = 20;

/**
 * The word of every position in a strip, channel by channel, at the width it really has; what never showed is hatched.
 *
 * @param marked - Channels that the picture is about. [index]
 */
export function wordStrip(
  disc: FittedDisc,
  channels: readonly FittedChannel[],
  marked: readonly number[] = [],
): Markup {
  const x = (deg: number): number => LEFT + ((WIDTH - LEFT - 12) * deg) / 360;
  const height = ROW * channels.length + 46;
  const cells = disc.positions.flatMap(({ word, centreDeg, halfWidthDeg, seen }) =>
    channels.flatMap(({ channel }): Markup[] => {
      if (word[channel] !== '1') return [];
      const from = centreDeg - halfWidthDeg;
      const fill = !seen ? look.accentTint : marked.includes(channel) ? look.accent : look.material;
      const y = 10 + channel * ROW;
      return pieces(from, 2 * halfWidthDeg).map(([start, span]) =>
        element('rect', { x: x(start), y, width: x(start + span) - x(start), height: ROW - 4, fill }),
      );
    }),
  );
  const missing = disc.positions
    .filter(({ seen }) => !seen)
    .map(({ position, centreDeg }) =>
      label(
        `${position}?`,
        { x: x(centreDeg) - 6, y: height - 22 },
        { fill: look.accent, 'font-weight': 'bold' },
      ),
    );
  return picture(
    {
      width: WIDTH,
      height,
      title: 'The word of every position, channel by channel, over one turn of the disc as made.',
    },
    ...channels.map(({ channel, pin, inverted }) =>
      label(`${channel}${pin ? ` on ${pin}` : ''}${inverted ? ', inverted' : ''}`, {
        x: 8,
        y: 23 + channel * ROW,
      }),
    ),
    ...cells,
    ...missing,
    ...[0, 90, 180, 270, 360].map((deg) =>
      label(`${deg}°`, { x: x(deg) - 10, y: height - 6 }, { fill: look.faintInk }),
    ),
  );
}

/** A span of the turn, cut where it passes 0 or 360. [deg] */
function pieces(from: number, span: number): [number, number][] {
  const start = ((from % 360) + 360) % 360;
  return start + span <= 360
    ? [[start, span]]
    : [
        [start, 360 - start],
        [0, start + span - 360],
      ];
}
