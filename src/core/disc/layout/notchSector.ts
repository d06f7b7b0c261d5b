import { radToDeg } from '../../units/index.ts';
import type { DiscSpec, RingSector } from '../discSpec.ts';

/**
 * The index notch: a bite out of the rim with radial sides, centred on disc angle 0.
 *
 * @param spec - The disc; `notch.widthMm` is measured straight across at the rim. [mm]
 * @returns The bite, or `null` where the disc has none.
 */
export function notchSector(spec: DiscSpec): RingSector | null {
  const { widthMm, depthMm } = spec.notch;
  if (widthMm === 0) return null;
  const outerRadiusMm = spec.diameterMm / 2;
  const halfDeg = radToDeg(Math.asin(Math.min(1, widthMm / spec.diameterMm)));
  return {
    innerRadiusMm: outerRadiusMm - depthMm,
    outerRadiusMm,
    fromDeg: 360 - halfDeg,
    toDeg: 360 + halfDeg,
  };
}
