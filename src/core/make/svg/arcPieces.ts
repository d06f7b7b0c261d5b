import type { Point } from '../../disc/index.ts';

/** A piece of an arc about its centre. */
export interface ArcPiece {
  readonly to: Point;
  /** Angle swept, above 0 against the clock on the y-up sheet. [rad] */
  readonly turn: number;
}

/** Angle of a place seen from a centre, against the clock on the y-up sheet. [rad] */
function bearing(of: Point, centre: Point): number {
  return Math.atan2(of.yMm - centre.yMm, of.xMm - centre.xMm);
}

/** Angle an arc sweeps, in (0, 2π]. [rad] */
function sweepOf(from: Point, to: Point, centre: Point, clockwise: boolean): number {
  const turn = (clockwise ? -1 : 1) * (bearing(to, centre) - bearing(from, centre));
  const sweep = turn - 2 * Math.PI * Math.floor(turn / (2 * Math.PI));
  return sweep === 0 ? 2 * Math.PI : sweep;
}

/** An arc by its ends and its centre, as a pen is told of it. */
export interface Arc {
  readonly from: Point;
  readonly to: Point;
  readonly centre: Point;
  readonly clockwise: boolean;
}

/**
 * An arc in equal pieces, none longer than asked; the last ends exactly where the arc does.
 *
 * @param arc - Its ends and centre on a y-up sheet. [mm]
 * @param longest - Most that a piece sweeps. [rad]
 * @returns Pieces in order. n ≥ 1
 */
export function arcPieces({ from, to, centre, clockwise }: Arc, longest: number): ArcPiece[] {
  const radius = Math.hypot(to.xMm - centre.xMm, to.yMm - centre.yMm);
  const sweep = sweepOf(from, to, centre, clockwise);
  const count = Math.ceil(sweep / longest - 1e-9);
  const start = bearing(from, centre);
  const way = clockwise ? -1 : 1;
  return Array.from({ length: count }, (_, piece) => {
    const angle = start + (way * sweep * (piece + 1)) / count;
    const end = {
      xMm: centre.xMm + radius * Math.cos(angle),
      yMm: centre.yMm + radius * Math.sin(angle),
    };
    return { to: piece === count - 1 ? to : end, turn: (way * sweep) / count };
  });
}
