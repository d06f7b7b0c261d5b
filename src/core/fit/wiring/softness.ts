import { medianOf } from '../levels/spread.ts';
import type { ColumnLevels } from '../levels/channelLevels.ts';
import type { Stretch } from '../reading/recording.ts';
import type { Chain } from '../angles/chains.ts';
import type { Wiring } from './findWirings.ts';

/** Samples on a slope lie between these shares of the swing. [-] */
const SLOPE = { from: 0.12, to: 0.88 } as const;
/** Fewer samples on a slope do not tell how steep it is. [-] */
const LEAST_SAMPLES = 3;

/** Share of the swing of a column at a sample. [-] */
const shareOf = ({ lowPlateau, highPlateau }: ColumnLevels, counts: number): number =>
  (counts - lowPlateau) / (highPlateau - lowPlateau);

/** Turn for the whole swing, by the slope through one crossing; `null` where too few samples lie on it. [ms] */
function swingMs(stretch: Stretch, level: ColumnLevels, sample: number): number | null {
  const inside = (i: number): boolean => {
    const row = stretch.rows[i];
    const share = row ? shareOf(level, row[level.column]!) : -1;
    return share >= SLOPE.from && share <= SLOPE.to;
  };
  let from = sample;
  while (inside(from - 1)) from--;
  let to = sample;
  while (inside(to)) to++;
  if (to - from < LEAST_SAMPLES) return null;
  const share = (i: number): number => shareOf(level, stretch.rows[i]![level.column]!);
  const gained = Math.abs(share(to - 1) - share(from));
  return gained < 0.25 ? null : (stretch.timesMs[to - 1]! - stretch.timesMs[from]!) / gained;
}

/**
 * Turn from dark to lit across an edge of each channel, as far as samples lie on the slopes. [deg]
 *
 * @returns `null` for a channel whose edges pass between two samples. n = channels
 */
export function edgeWidths(
  wiring: Wiring,
  chains: readonly Chain[],
  stretches: readonly Stretch[],
  levels: readonly ColumnLevels[],
): (number | null)[] {
  const found: number[][] = wiring.channels.map(() => []);
  for (const { crossings, sightings } of chains) {
    const spanMs = crossings.at(-1)!.timeMs - crossings[0]!.timeMs;
    const unit = spanMs / Math.max(1e-9, sightings.at(-1)!.time);
    for (const [i, { channel, stretch, sample }] of crossings.entries()) {
      const wire = wiring.channels[channel];
      const ms = wire ? swingMs(stretches[stretch]!, levels[wire.column]!, sample) : null;
      if (ms !== null) found[channel]!.push((ms * Math.abs(sightings[i]!.speed)) / unit);
    }
  }
  return found.map((widths) => (widths.length >= 2 ? medianOf(widths) : null));
}

/** How well widths of one radius are known: the slope is a few samples, the light differs from lamp to lamp. [-] */
const WIDTH_SD = 0.05;

/**
 * How well the widths of the edges agree with the radii of the tracks, as a logarithm: the same slit turns through more
 * degrees nearer to the shaft, so that an inner track cannot pass for an outer one. [-]
 */
export function radiusEvidence(widths: readonly (number | null)[], radiiMm: readonly number[]): number {
  const logs = widths.flatMap((width, c) =>
    width === null || width <= 0 ? [] : [Math.log(width * radiiMm[c]!)],
  );
  if (logs.length < 2) return 0;
  const middle = medianOf(logs);
  // A width that fits nothing at all is a fault of its own, not a proof against a wiring.
  return -logs.reduce((sum, log) => sum + Math.min(12, (log - middle) ** 2 / (2 * WIDTH_SD ** 2)), 0);
}
