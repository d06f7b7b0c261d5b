import { badReading } from '../refusal.ts';

/**
 * Speeds of the trade as exact fractions of a metre per second, `[numerator, denominator]` [m/s].
 *
 * The knot is one nautical mile of 1852 m an hour; the mile is 1609.344 m and the foot 0.3048 m.
 */
const EXACT = {
  'm/s': [1, 1],
  'km/h': [1000, 3600],
  kt: [1852, 3600],
  mph: [1609.344, 3600],
  'ft/s': [0.3048, 1],
} as const;

/** Name of a unit of speed that can be read and shown. */
export type SpeedUnit = keyof typeof EXACT;

/** Every unit of speed known here, metres per second first. */
export const speedUnits = Object.keys(EXACT) as readonly SpeedUnit[];

/**
 * A speed of any unit in metres per second.
 *
 * @param value - Speed in that unit. [m/s, km/h, kt, mph or ft/s], finite
 * @returns The same speed. [m/s]
 * @throws `wind/bad-reading` when the value is not finite.
 * @source International yard and pound agreement 1959; First Int. Extraordinary Hydrographic Conference 1929.
 * @check test/published/speed-units/speedUnit.test.ts
 */
export function speedFrom(value: number, unit: SpeedUnit): number {
  if (!Number.isFinite(value)) throw badReading('speedFrom(value)', value, `a finite speed in ${unit}`);
  const [numerator, denominator] = EXACT[unit];
  return (value * numerator) / denominator;
}

/**
 * A speed in another unit.
 *
 * @param speedMPerS - Speed. [m/s], finite
 * @returns The same speed. [m/s, km/h, kt, mph or ft/s]
 * @throws `wind/bad-reading` when the speed is not finite.
 * @source as `speedFrom`.
 * @check test/published/speed-units/speedUnit.test.ts
 */
export function speedIn(speedMPerS: number, unit: SpeedUnit): number {
  if (!Number.isFinite(speedMPerS))
    throw badReading('speedIn(speedMPerS)', speedMPerS, 'a finite speed in m/s');
  const [numerator, denominator] = EXACT[unit];
  return (speedMPerS * denominator) / numerator;
}
