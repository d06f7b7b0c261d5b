import type { Pen, Point } from '../pen.ts';

/** A pen that draws everything larger or smaller about the origin. @param scale - Size drawn over size given. [-] */
export function scaledPen(pen: Pen, scale: number): Pen {
  if (scale === 1) return pen;
  const scaled = ({ xMm, yMm }: Point): Point => ({ xMm: scale * xMm, yMm: scale * yMm });
  return {
    moveTo: (to) => pen.moveTo(scaled(to)),
    lineTo: (to) => pen.lineTo(scaled(to)),
    arcTo: (to, centre, clockwise) => pen.arcTo(scaled(to), scaled(centre), clockwise),
    close: () => pen.close(),
  };
}
