import { MOUNT_MM, type HolderPlan } from '../holderPlan.ts';
import { glands, type GlandName } from '../../../head/index.ts';
import type { Bearing } from './fittings.ts';

/** Floor and wall, in whole lines of a 0.4 mm nozzle. [mm] */
export const [FLOOR_MM, WALL_MM] = [3, 2.4];

/** Room under the lower holder for leads to bend, and above the upper one. [mm] */
export const [LEADS_MM, HEADROOM_MM] = [12, 10];

/** Air between the wall and each skirt of the lid. [mm] @source common practice, no source: moving fit of a print. */
export const SKIRT_GAP_MM = 0.6;

/** Clear space between holder and wall. [mm] */
const BESIDE_MM = 2;

/** Sizes of the two halves, as they shall come out. */
export interface HousingPlan {
  readonly bearing: Bearing;
  readonly gland: GlandName;
  /** Inside of the wall. [mm] */
  readonly innerRadiusMm: number;
  /** Floor's upper face to the wall's upper edge. [mm] */
  readonly insideMm: number;
  /** Outer radius of the bearing's seat. [mm] */
  readonly seatRadiusMm: number;
  /** Outside of the lid. [mm] */
  readonly outerRadiusMm: number;
}

/** Wall of a skirt. [mm] */
export const SKIRT_MM = 2;

/**
 * Sizes of the housing round one head.
 *
 * @param plan - What stands inside.
 * @param stackMm - Height of both holders and the spacer. [mm]
 * @param fittings - Bearing and gland.
 */
export function housingPlan(
  plan: HolderPlan,
  stackMm: number,
  { bearing, gland }: { bearing: Bearing; gland: GlandName },
): HousingPlan {
  const seatRadiusMm = bearing.outerMm / 2 + 2 * WALL_MM;
  // Seat, gland and wall must stand side by side even round a tiny disc.
  const leastRadius = seatRadiusMm + glands[gland].seatMm + MOUNT_MM;
  const innerRadiusMm = Math.max(plan.reachMm + BESIDE_MM + SKIRT_MM, leastRadius);
  return {
    bearing,
    gland,
    innerRadiusMm,
    insideMm: LEADS_MM + stackMm + HEADROOM_MM,
    seatRadiusMm,
    outerRadiusMm: innerRadiusMm + WALL_MM + SKIRT_GAP_MM + SKIRT_MM,
  };
}
