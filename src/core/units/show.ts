import type { Degrees } from './angle.ts';

/**
 * A number as text with at most `places` decimals and no trailing zeros; -0 shows as 0.
 *
 * @param value - Any finite number. [-]
 * @param places - Most decimals kept. [-], 0..15
 */
export function showNumber(value: number, places: number): string {
  const fixed = value.toFixed(places);
  const trimmed = fixed.includes('.') ? fixed.replace(/\.?0+$/, '') : fixed;
  return trimmed === '-0' ? '0' : trimmed;
}

/** Length with its unit, at most three decimals. [mm] */
export function showMm(length: number): string {
  return `${showNumber(length, 3)} mm`;
}

/** Angle with its sign as written, at most three decimals. [deg] */
export function showDegrees(angle: Degrees): string {
  return `${showNumber(angle, 3)}°`;
}
