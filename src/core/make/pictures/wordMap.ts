import type { CodeTable } from '../../codes/index.ts';
import { element, joined, label, look, picture, type Markup } from '../../report/index.ts';

const ROW = 18;
const LEFT = 84;
const WIDTH = 720;

/** The disc unrolled: one row a channel, light where the channel sees a window. */
export function wordMap(code: CodeTable, windowLevel: 0 | 1): Markup {
  const cell = WIDTH / code.positions;
  const isLit = (word: string, channel: number): boolean => Number(word[channel]) === windowLevel;
  const rows = code.channels.map((_, channel) => {
    const y = 8 + channel * ROW;
    // One bar for each stretch of equal cells: a disc of 1024 positions stays a small picture.
    const bars: Markup[] = [];
    for (let from = 0; from < code.positions;) {
      let to = from;
      while (to < code.positions && isLit(code.words[to]!, channel) === isLit(code.words[from]!, channel))
        to++;
      const fill = isLit(code.words[from]!, channel) ? look.light : look.material;
      bars.push(
        element('rect', {
          x: LEFT + from * cell,
          y,
          width: (to - from) * cell,
          height: ROW - 4,
          fill,
          stroke: look.ink,
          'stroke-width': 0.4,
        }),
      );
      from = to;
    }
    return joined([
      label(`channel ${channel}`, { x: LEFT - 8, y: y + 11 }, { 'text-anchor': 'end' }),
      ...bars,
    ]);
  });
  const bottom = 8 + code.channels.length * ROW + 12;
  const ticks = Array.from({ length: 9 }, (_, i) =>
    label(
      `${i * 45}°`,
      { x: LEFT + (i * WIDTH) / 8, y: bottom },
      { 'text-anchor': 'middle', fill: look.faintInk },
    ),
  );
  const title = `What each channel sees over one turn: ${code.positions} positions, ${code.channels.length} channels`;
  return picture({ width: LEFT + WIDTH + 24, height: bottom + 10, title }, ...rows, ...ticks);
}
