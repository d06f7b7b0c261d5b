import type { DiscSpec } from '../discSpec.ts';
import { drawnOf } from '../form.ts';

/** Least widths on the drawing. [mm] */
export interface LeastDrawn {
  readonly windowMm: number;
  readonly landMm: number;
  readonly webMm: number;
  /** Wall round the bore and behind the notch, and width of a rib. */
  readonly wallMm: number;
}

/** Least width of anything, even where a maker writes 0: no tool of any kind holds less by hand. [mm] */
const LEAST_MM = 0.01;

/** No feature may lose more than half its drawn width to the tool. [-] @source common practice, no source. */
const KEPT_SHARE = 0.5;

/**
 * Least widths a drawing may have for a process.
 *
 * @param spec - What the maker's process can do; a positive growth eats lands and webs, a negative one windows. An
 * allowance of the drawing eats the other kind before the tool gives it back.
 * @returns The process's own minima, or more where either would eat more than half of the feature. [mm]
 */
export function leastDrawn(spec: Pick<DiscSpec, 'process' | 'drawn'>): LeastDrawn {
  const { process } = spec;
  const allowance = 2 * drawnOf(spec).edgeLossMm;
  const eatenFromMaterial = Math.max(0, process.windowGrowthMm, -allowance) / KEPT_SHARE;
  const eatenFromWindow = Math.max(0, -process.windowGrowthMm, allowance) / KEPT_SHARE;
  const landMm = Math.max(process.minLandMm, eatenFromMaterial, LEAST_MM);
  const webMm = Math.max(process.minWebMm, eatenFromMaterial, LEAST_MM);
  const windowMm = Math.max(process.minWindowMm, eatenFromWindow, LEAST_MM);
  return { windowMm, landMm, webMm, wallMm: Math.max(landMm, webMm) };
}
