import erfc from '@stdlib/math-base-special-erfc';
import type { Aperture } from '../headSpec.ts';

/**
 * Light of a spot beyond a straight edge, added up from the edge outwards: A(x) = ∫ T from x to ∞. [mm]
 *
 * With it an edge that a light of some size, or a slit askew to it, makes soft has a closed form.
 *
 * @source derived: slit, quadratic; round, √(1−u²) − u acos u − (1−u²)^1.5/3 over π; Gaussian, integral of erfc.
 */
export function areaBeyond(aperture: Aperture, xMm: number): number {
  switch (aperture.shape) {
    case 'slit':
      return slitArea(aperture.widthMm, xMm);
    case 'round': {
      const radius = aperture.diameterMm / 2;
      return radius * roundArea(xMm / radius);
    }
    case 'gaussian': {
      const k = Math.SQRT2 / aperture.radiusMm;
      const z = k * xMm;
      return (Math.exp(-z * z) / Math.sqrt(Math.PI) - z * erfc(z)) / (2 * k);
    }
  }
}

function slitArea(width: number, x: number): number {
  if (x >= width / 2) return 0;
  return x <= -width / 2 ? -x : (width / 2 - x) ** 2 / (2 * width);
}

function roundArea(u: number): number {
  if (u >= 1) return 0;
  if (u <= -1) return -u;
  const root = Math.sqrt(1 - u * u);
  return (root - u * Math.acos(u) - root ** 3 / 3) / Math.PI;
}

/** A second sum of a slit's light, ∫ A from x to ∞, for a slit that is askew and lit by a light of some size. [mm²] */
export function slitAreaTwice(width: number, x: number): number {
  if (x >= width / 2) return 0;
  return x <= -width / 2 ? (x * x) / 2 + (width * width) / 24 : (width / 2 - x) ** 3 / (6 * width);
}
