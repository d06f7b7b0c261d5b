import type { Pen, Point } from '../../disc/index.ts';
import { showNumber } from '../../units/index.ts';
import { arcPieces } from './arcPieces.ts';

/** Decimals of a millimetre in a drawing: a hundredth of what any of the processes can place. */
const PLACES = 5;

/** Longest arc in one piece: near half a turn, rounding of the ends would shift the middle of the arc. [rad] */
const LONGEST_ARC = (2 * Math.PI) / 3;

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
      const size = showNumber(Math.hypot(to.xMm - centre.xMm, to.yMm - centre.yMm), PLACES);
      for (const piece of arcPieces({ from: at, to, centre, clockwise }, LONGEST_ARC)) {
        written.push(`A${size} ${size} 0 0 ${clockwise ? 1 : 0} ${place(piece.to)}`);
      }
      at = to;
    },
    close() {
      written.push('Z');
    },
  };
  return { pen, pathData: () => written.join(' ') };
}
