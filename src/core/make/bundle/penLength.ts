import type { Pen, Point } from '../../disc/index.ts';
import { arcPieces } from '../svg/arcPieces.ts';

/** How far a tool travels along outlines, and how often it begins anew. */
export interface Travel {
  readonly lengthMm: number;
  readonly outlines: number;
}

/**
 * Length of everything that is drawn. [mm]
 *
 * @param draw - Draws outlines with a pen.
 * @source lengths of lines, and radius times angle of arcs.
 * @check src/core/make/bundle/bundle.test.ts (closed form)
 */
export function travelOf(draw: (pen: Pen) => void): Travel {
  let [lengthMm, outlines] = [0, 0];
  let at: Point = { xMm: 0, yMm: 0 };
  let start = at;
  const lineTo = (to: Point): void => {
    lengthMm += Math.hypot(to.xMm - at.xMm, to.yMm - at.yMm);
    at = to;
  };
  draw({
    moveTo(to) {
      outlines++;
      [at, start] = [to, to];
    },
    lineTo,
    arcTo(to, centre, clockwise) {
      const radius = Math.hypot(to.xMm - centre.xMm, to.yMm - centre.yMm);
      const turns = arcPieces({ from: at, to, centre, clockwise }, Math.PI).map(({ turn }) => Math.abs(turn));
      lengthMm += radius * turns.reduce((sum, turn) => sum + turn, 0);
      at = to;
    },
    close: () => lineTo(start),
  });
  return { lengthMm, outlines };
}
