import type { Problem } from '../../error/index.ts';
import { showDegrees, showMm, showNumber, wrapDegrees, type Degrees } from '../../units/index.ts';
import { sheetPoint } from '../draw/sheetPoint.ts';
import type { Point } from '../pen.ts';

/** A place on the drawing of a disc or a strip, y up. [mm] */
export interface FaultPlace extends Point {
  /** Where it is, in words. */
  readonly text: string;
}

/** Names a place of the pattern. [mm], [deg] */
export type PlaceAt = (radiusMm: number, angleDeg: Degrees) => FaultPlace;

/** A place on a disc. */
export const discPlace: PlaceAt = (radiusMm, angleDeg) => ({
  ...sheetPoint(angleDeg, radiusMm),
  text: `radius ${showMm(Number(radiusMm.toFixed(3)))}, ${showDegrees(Number(wrapDegrees(angleDeg).toFixed(3)))}`,
});

/** A place on a strip: along it from where its turn begins, and across it from its lower edge. [mm] */
export function stripPlace({ xMm, yMm }: Point): FaultPlace {
  return { xMm, yMm, text: `${showNumber(xMm, 2)} mm along the strip, ${showNumber(yMm, 2)} mm across it` };
}

/** A problem whose fix is not worked out yet: one change of the file often mends several at once. */
export interface Fault extends Omit<Problem, 'fix'> {
  /** Where on the drawing it shows; nowhere in particular where left out. */
  readonly at?: readonly FaultPlace[];
}

/** A problem with its own fix, and where on the drawing it shows. */
export interface PlacedProblem extends Problem {
  readonly at: readonly FaultPlace[];
}
