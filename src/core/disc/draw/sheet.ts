import { radToDeg, type Degrees } from '../../units/index.ts';
import type { Point } from '../pen.ts';
import { sheetPoint } from './sheetPoint.ts';

/** How angle and radius of the pattern become a place on the sheet. */
export interface Sheet {
  /** Place of an angle and a radius. [deg], [mm] */
  pointAt(angle: Degrees, radiusMm: number): Point;
  /** Turn that lies as far from a radius, square to it, as a distance. [mm], [deg] */
  asideDeg(radiusMm: number, outMm: number): Degrees;
  /** True where arcs of the pattern are drawn as straight lines. */
  readonly isUnrolled: boolean;
}

/** A disc seen from its patterned face. */
export const roundSheet: Sheet = {
  pointAt: sheetPoint,
  asideDeg: (radiusMm, outMm) => radToDeg(Math.asin(Math.max(-1, Math.min(1, outMm / radiusMm)))),
  isUnrolled: false,
};

/**
 * A strip seen from its patterned face: x runs with the disc angle, y across.
 *
 * @param mmPerDeg - Length of strip for each degree. [mm/deg]
 */
export function stripSheet(mmPerDeg: number): Sheet {
  return {
    pointAt: (angle, across) => ({ xMm: angle * mmPerDeg, yMm: across }),
    asideDeg: (_, outMm) => outMm / mmPerDeg,
    isUnrolled: true,
  };
}
