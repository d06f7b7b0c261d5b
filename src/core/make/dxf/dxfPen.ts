import { LWPolylineFlags, point2d, type DxfWriter, type LWPolylineVertex } from '@tarikjabiri/dxf';
import type { Pen, Point } from '../../disc/index.ts';
import { arcPieces } from '../svg/arcPieces.ts';

/** Decimals of a millimetre, as in every drawing, and one more: a bulge multiplies what is rounded. */
const PLACES = 6;

/** Longest arc in one piece; a bulge near a whole turn has no bound. [rad] */
const LONGEST_ARC = (2 * Math.PI) / 3;

/** Decimals of a bulge: engines of JavaScript differ in the last of sixteen, and the same drawing has the same bytes. */
const BULGE_PLACES = 12;

const rounded = (length: number): number => Number(length.toFixed(PLACES)) + 0;

/**
 * A pen that writes polylines with true arcs into a DXF drawing.
 *
 * @param drawing - Receives one polyline an outline. [mm]
 * @param layerName - Layer of all of them.
 * @returns The pen, and an end that writes what is still open.
 * @source Autodesk, DXF Reference, LWPOLYLINE: bulge = tan(a quarter of the angle swept), above 0 against the clock.
 * @check test/journeys/discDxf.test.ts (ezdxf)
 */
export function dxfPen(drawing: DxfWriter, layerName: string): { readonly pen: Pen; end(): void } {
  let corners: LWPolylineVertex[] = [];
  let at: Point = { xMm: 0, yMm: 0 };
  const corner = ({ xMm, yMm }: Point): LWPolylineVertex => ({ point: point2d(rounded(xMm), rounded(yMm)) });
  const write = (flags: LWPolylineFlags): void => {
    if (corners.length > 1) drawing.addLWPolyline(corners, { flags, layerName });
    corners = [];
  };
  const bend = (turn: number): void => {
    corners[corners.length - 1]!.bulge = Number(Math.tan(turn / 4).toFixed(BULGE_PLACES));
  };
  const pen: Pen = {
    moveTo(to) {
      write(LWPolylineFlags.None);
      corners = [corner(to)];
      at = to;
    },
    lineTo(to) {
      corners.push(corner(to));
      at = to;
    },
    arcTo(to, centre, clockwise) {
      for (const piece of arcPieces({ from: at, to, centre, clockwise }, LONGEST_ARC)) {
        bend(piece.turn);
        corners.push(corner(piece.to));
      }
      at = to;
    },
    close() {
      const [first] = corners;
      const last = corners.at(-1);
      // An outline that comes back by an arc has its first corner twice.
      if (
        first &&
        last &&
        last !== first &&
        first.point.x === last.point.x &&
        first.point.y === last.point.y
      ) {
        corners.pop();
      }
      write(LWPolylineFlags.Closed);
    },
  };
  return { pen, end: () => write(LWPolylineFlags.None) };
}
