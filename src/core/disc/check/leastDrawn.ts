import type { Process } from '../discSpec.ts';

/** Least widths on the drawing. [mm] */
export interface LeastDrawn {
  readonly windowMm: number;
  readonly landMm: number;
  readonly webMm: number;
}

/** No feature may lose more than half its drawn width to the tool. [-] @source common practice, no source. */
const KEPT_SHARE = 0.5;

/**
 * Least widths a drawing may have for a process.
 *
 * @param process - What the maker's process can do; a positive growth eats lands and webs, a negative one windows.
 * @returns The process's own minima, or more where growth would eat more than half of the feature. [mm]
 */
export function leastDrawn(process: Process): LeastDrawn {
  const eatenFromMaterial = Math.max(0, process.windowGrowthMm) / KEPT_SHARE;
  const eatenFromWindow = Math.max(0, -process.windowGrowthMm) / KEPT_SHARE;
  return {
    windowMm: Math.max(process.minWindowMm, eatenFromWindow),
    landMm: Math.max(process.minLandMm, eatenFromMaterial),
    webMm: Math.max(process.minWebMm, eatenFromMaterial),
  };
}
