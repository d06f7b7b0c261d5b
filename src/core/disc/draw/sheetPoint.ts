import { degToRad, type Degrees } from '../../units/index.ts';
import type { Point } from '../pen.ts';

/**
 * Where a place on the disc lies on the sheet: the one function that joins disc angles and drawings.
 *
 * Seen from the patterned face: disc angle 0 is straight up, growing clockwise; y is up, x right.
 *
 * @param angle - Disc angle. [deg]
 * @param radiusMm - Distance from the axis. [mm]
 * @returns Place on the sheet. [mm]
 */
export function sheetPoint(angle: Degrees, radiusMm: number): Point {
  const turn = degToRad(angle);
  return { xMm: radiusMm * Math.sin(turn), yMm: radiusMm * Math.cos(turn) };
}

/** The axis on the sheet. [mm] */
export const AXIS: Point = { xMm: 0, yMm: 0 };
