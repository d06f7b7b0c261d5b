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

/**
 * A number as text with so many figures, small ones too, and never coarser than whole: 0.5 is not 1, nor 375 380.
 *
 * @param value - Any finite number. [-]
 * @param figures - Figures kept, counted from the first that is not 0; all whole ones besides. [-], 1..15
 * @check src/core/units/show.test.ts
 */
export function showSignificant(value: number, figures: number): string {
  if (value === 0) return '0';
  const leading = Math.floor(Math.log10(Math.abs(value)));
  return showNumber(value, Math.max(0, Math.min(15, figures - 1 - leading)));
}

/** Length with its unit, at most three decimals. [mm] */
export function showMm(length: number): string {
  return `${showNumber(length, 3)} mm`;
}

/** Angle with its sign as written, at most three decimals. [deg] */
export function showDegrees(angle: Degrees): string {
  return `${showNumber(angle, 3)}°`;
}
