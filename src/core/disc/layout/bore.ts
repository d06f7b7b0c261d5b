import { radToDeg, type Degrees } from '../../units/index.ts';
import type { Bore } from '../discSpec.ts';

/** Circle round a hexagon over its flats: 2 / √3. [-] */
const HEX_CORNERS = 2 / Math.sqrt(3);

/** Diameter of the circle that a bore just fits into. [mm] @source regular hexagon: corners 2/√3 of the flats. */
export function boreCircleMm(bore: Bore): number {
  return bore.shape === 'hex' ? HEX_CORNERS * bore.diameterMm : bore.diameterMm;
}

/**
 * Half the angle that the flat of a D bore takes from its circle. [deg]
 *
 * @param bore - D bore whose flat lies between its middle and its circle. [mm]
 * @source derived: the flat lies `acrossFlat - radius` from the axis, so cos(half) = that over the radius.
 */
export function flatHalfAngleDeg(bore: Extract<Bore, { shape: 'd' }>): Degrees {
  const radius = bore.diameterMm / 2;
  return radToDeg(Math.acos((bore.acrossFlatMm - radius) / radius));
}

/** A stretch of the bore's circle, clockwise: along it, or straight across from end to end. [deg] */
export interface BoreSide {
  readonly fromDeg: Degrees;
  readonly spanDeg: Degrees;
  readonly isFlat: boolean;
}

/**
 * Sides of a bore round its circle, clockwise; a flat of a D or a hexagon faces the index mark.
 *
 * @returns Sides that span 360 degrees together. n ≥ 1
 */
export function boreSides(bore: Bore): readonly BoreSide[] {
  if (bore.shape === 'round') return [{ fromDeg: 0, spanDeg: 360, isFlat: false }];
  if (bore.shape === 'hex') {
    return Array.from({ length: 6 }, (_, side) => ({ fromDeg: 30 + 60 * side, spanDeg: 60, isFlat: true }));
  }
  const half = flatHalfAngleDeg(bore);
  return [
    { fromDeg: half, spanDeg: 360 - 2 * half, isFlat: false },
    { fromDeg: 360 - half, spanDeg: 2 * half, isFlat: true },
  ];
}

/** A bore whose every side lies farther out by half an allowance; below 0, farther in. [mm] */
export function widenedBore(bore: Bore, allowanceMm: number): Bore {
  const wider = { ...bore, diameterMm: bore.diameterMm + allowanceMm };
  return wider.shape === 'd' ? { ...wider, acrossFlatMm: wider.acrossFlatMm + allowanceMm } : wider;
}
