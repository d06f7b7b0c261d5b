import type { Pen, Point } from '../../disc/index.ts';
import { showNumber } from '../../units/index.ts';

/** Decimals of a millimetre in a drawing: a hundredth of what any of the processes can place. */
const PLACES = 5;

/** Longest arc in one piece: near half a turn, rounding of the ends would shift the middle of the arc. [rad] */
const LONGEST_ARC = (2 * Math.PI) / 3;

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

/**
 * A pen that writes SVG path data with true arcs; the sheet's y goes up, the picture's down.
 *
 * @returns The pen, and what it has written so far. [mm]
 * @source W3C, SVG 1.1 (Second Edition), 8.3.8: sweep-flag 1 is the way of growing angle, clockwise on screen.
 * @check test/journeys/discFiles.test.ts
 */
export function svgPen(): { readonly pen: Pen; pathData(): string } {
  const written: string[] = [];
  let at: Point = { xMm: 0, yMm: 0 };
  const place = ({ xMm, yMm }: Point) => `${showNumber(xMm, PLACES)} ${showNumber(-yMm, PLACES)}`;
  const pen: Pen = {
    moveTo(to) {
      written.push(`M${place(to)}`);
      at = to;
    },
    lineTo(to) {
      written.push(`L${place(to)}`);
      at = to;
    },
    arcTo(to, centre, clockwise) {
      const radius = Math.hypot(to.xMm - centre.xMm, to.yMm - centre.yMm);
      const sweep = sweepOf(at, to, centre, clockwise);
      const pieces = Math.ceil(sweep / LONGEST_ARC - 1e-9);
      const start = bearing(at, centre);
      for (let piece = 1; piece <= pieces; piece++) {
        const angle = start + ((clockwise ? -1 : 1) * sweep * piece) / pieces;
        const end =
          piece === pieces
            ? to
            : { xMm: centre.xMm + radius * Math.cos(angle), yMm: centre.yMm + radius * Math.sin(angle) };
        const size = showNumber(radius, PLACES);
        written.push(`A${size} ${size} 0 0 ${clockwise ? 1 : 0} ${place(end)}`);
      }
      at = to;
    },
    close() {
      written.push('Z');
    },
  };
  return { pen, pathData: () => written.join(' ') };
}
