import { circleOutline, rectangleOutline, type Outline } from '../solids/outline.ts';
import type { Footprint } from '../../head/index.ts';

/** A footprint wider by as much on every side. @param byMm - Both sides together. [mm] */
export function grownFootprint(footprint: Footprint, byMm: number): Footprint {
  switch (footprint.shape) {
    case 'round':
      return { ...footprint, diameterMm: footprint.diameterMm + byMm };
    case 'flatted':
      return { ...footprint, diameterMm: footprint.diameterMm + byMm, acrossMm: footprint.acrossMm + byMm };
    case 'box':
      return { ...footprint, alongMm: footprint.alongMm + byMm, acrossMm: footprint.acrossMm + byMm };
  }
}

/** Size of a footprint across the track, along a radius of the disc. [mm] */
export function acrossMm(footprint: Footprint): number {
  return footprint.shape === 'round' ? footprint.diameterMm : footprint.acrossMm;
}

/** A footprint as an outline round the origin: x along the track, y outwards. [mm] */
export function footprintOutline(footprint: Footprint): Outline {
  switch (footprint.shape) {
    case 'round':
      return circleOutline(footprint.diameterMm / 2);
    case 'flatted': {
      const half = footprint.acrossMm / 2;
      const clipped = circleOutline(footprint.diameterMm / 2).map(
        ([x, y]) => [x, Math.min(half, Math.max(-half, y))] as const,
      );
      return withExactFlats(clipped, footprint.diameterMm / 2, half);
    }
    case 'box':
      return rectangleOutline([footprint.alongMm, footprint.acrossMm]);
  }
}

/** The corners where flat and circle meet, in place of the corners that were pressed onto the flats. */
function withExactFlats(outline: Outline, radius: number, half: number): Outline {
  const end = Math.sqrt(radius ** 2 - half ** 2);
  const round = outline.filter(([, y]) => Math.abs(y) < half - 1e-9);
  const left = round.filter(([x]) => x < 0);
  const [rightUp, rightDown] = [
    round.filter(([x, y]) => x > 0 && y >= 0),
    round.filter(([x, y]) => x > 0 && y < 0),
  ];
  return [...rightUp, [end, half], [-end, half], ...left, [-end, -half], [end, -half], ...rightDown];
}
