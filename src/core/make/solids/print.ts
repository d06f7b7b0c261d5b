import {
  boreCircleMm,
  boreSides,
  correctionsFrom,
  drawnHoleMm,
  drawnIslandMm,
  processDefaults,
  sheetPoint,
  UNMEASURED,
  widenedBore,
  type Bore,
  type Drawn,
  type Process,
} from '../../disc/index.ts';
import type { Degrees } from '../../units/index.ts';
import { circleOutline, type Outline, type Place } from './outline.ts';
import type { Shape } from './shapeKit.ts';

/** The printer that makes the parts, and how sizes are drawn for it. */
export interface PrintSetting {
  readonly process: Process;
  readonly corrections: Drawn;
  /** Side of the square bed. [mm] */
  readonly bedMm: number;
  /** Height of one layer. [mm] */
  readonly layerMm: number;
}

/**
 * How parts are printed: by the disc's own process where that prints, or by an ordinary printer.
 *
 * @param disc - Process, shaft, and corrections where the maker measured any. [mm]
 * @param printer - Bed and layer. [mm]
 */
export function printSetting(
  disc: { readonly process: Process; readonly bore: Bore; readonly drawn?: Drawn },
  { bedMm, layerMm }: { readonly bedMm: number; readonly layerMm: number },
): PrintSetting {
  const isPrinted = disc.process.kind === 'fdm';
  const process = isPrinted ? disc.process : processDefaults.fdm;
  const measured = isPrinted ? disc.drawn : undefined;
  const corrections = measured ?? correctionsFrom(process, UNMEASURED, disc.bore.diameterMm);
  return { process, corrections, bedMm, layerMm };
}

/** Corrections of edges alone: the whole part is brought to scale when it is finished. */
export function edgeCorrections({ corrections }: PrintSetting): Drawn {
  return { ...corrections, scale: 1 };
}

/** Width of a hole in an unfinished part, to come out as wanted. [mm] */
export function holeIn(print: PrintSetting, wantedMm: number): number {
  return drawnHoleMm(edgeCorrections(print), wantedMm);
}

/** Width of an outer size in an unfinished part, to come out as wanted. [mm] */
export function islandIn(print: PrintSetting, wantedMm: number): number {
  return drawnIslandMm(edgeCorrections(print), wantedMm);
}

/** The hole on the shaft in an unfinished part; a flat, where it has one, faces disc angle 0. [mm] */
export function boreIn(print: PrintSetting, bore: Bore): Outline {
  const wide = widenedBore(bore, print.corrections.boreAllowanceMm);
  const radius = boreCircleMm(wide) / 2;
  const place = (angle: Degrees): Place => {
    const { xMm, yMm } = sheetPoint(angle, radius);
    return [xMm, yMm];
  };
  if (wide.shape === 'round') return circleOutline(radius);
  const sidesOfCircle = circleOutline(radius).length;
  const clockwise = boreSides(wide).flatMap(({ fromDeg, spanDeg, isFlat }) => {
    const sides = isFlat ? 1 : Math.ceil((sidesOfCircle * spanDeg) / 360);
    return Array.from({ length: sides }, (_, side) => place(fromDeg + (spanDeg * side) / sides));
  });
  return clockwise.reverse();
}

/** A part as it is sent to the printer: to scale, its first layer corrected, standing on the bed. */
export function finished(shape: Shape, { corrections, layerMm }: PrintSetting): Shape {
  const { scale, footGrowthMm } = corrections;
  return shape.onBed().stretched(scale, scale).withoutFoot({ growthMm: footGrowthMm, layerMm });
}
