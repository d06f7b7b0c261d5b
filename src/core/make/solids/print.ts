import type { Bore, Process } from '../../disc/index.ts';
import { flatHalfAngleDeg, processDefaults, sheetPoint } from '../../disc/index.ts';
import {
  correctionsFrom,
  drawnBoreMm,
  drawnHoleMm,
  drawnIslandMm,
  type Corrections,
} from '../coupon/corrections.ts';
import { UNMEASURED, type CouponReadings } from '../coupon/couponReadings.ts';
import { circleOutline, type Outline } from './outline.ts';
import type { Shape } from './shapeKit.ts';

/** The printer that makes the parts, and how sizes are drawn for it. */
export interface PrintSetting {
  readonly process: Process;
  readonly corrections: Corrections;
  /** Side of the square bed. [mm] */
  readonly bedMm: number;
  /** Height of one layer. [mm] */
  readonly layerMm: number;
}

/**
 * How parts are printed: by the disc's own process where that prints, or by an ordinary printer.
 *
 * @param disc - Process and shaft. [mm]
 * @param readings - What the maker measured on the coupon of that process.
 * @param printer - Bed and layer. [mm]
 */
export function printSetting(
  disc: { readonly process: Process; readonly bore: Bore },
  readings: CouponReadings,
  printer: { readonly bedMm: number; readonly layerMm: number },
): PrintSetting {
  const isPrinted = disc.process.kind === 'fdm';
  const process = isPrinted ? disc.process : processDefaults.fdm;
  const corrections = correctionsFrom(process, isPrinted ? readings : UNMEASURED, disc.bore.diameterMm);
  return { process, corrections, ...printer };
}

/** Corrections of edges alone: the whole part is brought to scale when it is finished. */
export function edgeCorrections({ corrections }: PrintSetting): Corrections {
  const { scale, edgeLossMm, boreAllowanceMm, footGrowthMm } = corrections;
  return { scale: 1, edgeLossMm: edgeLossMm / scale, boreAllowanceMm: boreAllowanceMm / scale, footGrowthMm };
}

/** Width of a hole in an unfinished part, to come out as wanted. [mm] */
export function holeIn(print: PrintSetting, wantedMm: number): number {
  return drawnHoleMm(edgeCorrections(print), wantedMm);
}

/** Width of an outer size in an unfinished part, to come out as wanted. [mm] */
export function islandIn(print: PrintSetting, wantedMm: number): number {
  return drawnIslandMm(edgeCorrections(print), wantedMm);
}

/** Corner of a regular hexagon over half its width across the flats. [-] @source 2 / √3 */
const HEX_CORNER = 2 / Math.sqrt(3);

/** A shaft's outline with one flat, which faces disc angle 0. */
function flattedOutline(diameterMm: number, acrossFlatMm: number): Outline {
  const half = flatHalfAngleDeg({ shape: 'd', diameterMm, acrossFlatMm });
  const sides = circleOutline(diameterMm / 2).length;
  return Array.from({ length: sides }, (_, side) => {
    const { xMm, yMm } = sheetPoint(360 - half - ((360 - 2 * half) * side) / (sides - 1), diameterMm / 2);
    return [xMm, yMm] as const;
  });
}

/** The hole on the shaft in an unfinished part; its flat, where it has one, faces disc angle 0. [mm] */
export function boreIn(print: PrintSetting, bore: Bore): Outline {
  const diameterMm = drawnBoreMm(edgeCorrections(print), bore.diameterMm);
  switch (bore.shape) {
    case 'round':
      return circleOutline(diameterMm / 2);
    case 'd':
      return flattedOutline(diameterMm, bore.acrossFlatMm + (diameterMm - bore.diameterMm));
    case 'hex':
      return Array.from({ length: 6 }, (_, side) => {
        const { xMm, yMm } = sheetPoint(30 - 60 * side, (HEX_CORNER * diameterMm) / 2);
        return [xMm, yMm] as const;
      });
  }
}

/** A part as it is sent to the printer: to scale, its first layer corrected, standing on the bed. */
export function finished(shape: Shape, { corrections, layerMm }: PrintSetting): Shape {
  const { scale, footGrowthMm } = corrections;
  return shape.onBed().stretched(scale, scale).withoutFoot({ growthMm: footGrowthMm, layerMm });
}
