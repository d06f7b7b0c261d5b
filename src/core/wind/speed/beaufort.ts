import { requireAtLeast } from '../refusal.ts';

/** One force of the Beaufort scale. */
export interface BeaufortForce {
  /** 0..12. [-] */
  readonly force: number;
  readonly name: string;
  /** Lowest speed that counts as this force; the next force's lowest no longer does. [m/s] */
  readonly fromMPerS: number;
}

/** The scale, calm first. For means over 10 minutes, not for gusts. Lower bounds in [m/s]. */
export const beaufortScale: readonly BeaufortForce[] = [
  { force: 0, name: 'calm', fromMPerS: 0 },
  { force: 1, name: 'light air', fromMPerS: 0.3 },
  { force: 2, name: 'light breeze', fromMPerS: 1.6 },
  { force: 3, name: 'gentle breeze', fromMPerS: 3.4 },
  { force: 4, name: 'moderate breeze', fromMPerS: 5.5 },
  { force: 5, name: 'fresh breeze', fromMPerS: 8.0 },
  { force: 6, name: 'strong breeze', fromMPerS: 10.8 },
  { force: 7, name: 'near gale', fromMPerS: 13.9 },
  { force: 8, name: 'gale', fromMPerS: 17.2 },
  { force: 9, name: 'strong gale', fromMPerS: 20.8 },
  { force: 10, name: 'storm', fromMPerS: 24.5 },
  { force: 11, name: 'violent storm', fromMPerS: 28.5 },
  { force: 12, name: 'hurricane', fromMPerS: 32.7 },
];

/**
 * Force of a 10-minute mean speed, by the table's lower bounds and without rounding the speed first.
 *
 * @param meanSpeedMPerS - Mean over 10 minutes; a gust would give too high a force. [m/s], ≥ 0
 * @throws `wind/bad-reading` when the speed is negative or not finite.
 * @source WMO-No. 306, code table 1100 (Beaufort scale). Where prints differ over the bound between
 *   forces 2 and 3, 3.4 is taken, since v = 0.836 B^1.5 puts it at 3.3.
 * @check test/published/beaufort/beaufort.test.ts
 */
export function beaufortForce(meanSpeedMPerS: number): BeaufortForce {
  requireAtLeast(meanSpeedMPerS, 0, 'beaufortForce(meanSpeedMPerS)', 'm/s');
  return beaufortScale.findLast(({ fromMPerS }) => meanSpeedMPerS >= fromMPerS)!;
}
