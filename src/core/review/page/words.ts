import { showNumber } from '../../units/index.ts';
import type { BlockMean, Interval } from '../../wind/index.ts';

/** What stands where nothing is known. */
export const NOTHING = '–';

/** An instant as it is read, UTC. [ms UTC] */
export function instantText(atMs: number): string {
  return `${new Date(atMs).toISOString().slice(0, 16).replace('T', ' ')} UTC`;
}

/** A day. [ms UTC] */
export function dayText(atMs: number): string {
  return new Date(atMs).toISOString().slice(0, 10);
}

/** A number with its places, or the sign for nothing. */
export function numberText(value: number | null | undefined, places: number): string {
  return value === null || value === undefined ? NOTHING : showNumber(value, places);
}

/** A heading, never 360. [deg] */
export function headingText(headingDeg: number | null, places = 0): string {
  if (headingDeg === null) return NOTHING;
  return `${showNumber(Number(headingDeg.toFixed(places)) % 360, places)}°`;
}

/** A share in percent. [-] */
export function percentText(share: number | null | undefined, places = 1): string {
  return share === null || share === undefined ? NOTHING : `${showNumber(100 * share, places)} %`;
}

/** An interval. [unit of the figure] */
export function intervalText(
  interval: Interval | null | undefined,
  places: number,
  unit = '',
  times = 1,
): string {
  if (!interval) return NOTHING;
  return `${showNumber(times * interval.low, places)} to ${showNumber(times * interval.high, places)}${unit}`;
}

/** A mean with its interval in brackets. */
export function meanText(mean: BlockMean | null, places: number): string {
  if (!mean) return NOTHING;
  const value = showNumber(mean.mean, places);
  return mean.interval ? `${value} (${intervalText(mean.interval, places)})` : value;
}
