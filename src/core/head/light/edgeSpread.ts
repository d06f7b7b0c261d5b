import erfc from '@stdlib/math-base-special-erfc';
import normalQuantile from '@stdlib/stats-base-dists-normal-quantile';
import type { Aperture } from '../headSpec.ts';

/** How softly one straight edge of the disc passes through what a channel sees. */
export interface EdgeSpread {
  /**
   * Share of full light that passes with the edge `xMm` ahead of the spot's middle and the window beyond it.
   *
   * 1 when the edge lies far behind, 0.5 on the middle, 0 when it lies far ahead. [-]
   */
  transmitted(xMm: number): number;
  /** Where the edge lies when that share passes, the inverse of `transmitted`; ±`Infinity` outside 0..1. [mm] */
  edgeAt(light: number): number;
  /** Farther than this an edge changes nothing, or less than 1e-6 of full light. [mm] */
  readonly reachMm: number;
}

/** A Gaussian beam has no rim: it ends here where 1e-6 of its light is left, 2.3767 of its 1/e² radius. [-] */
const GAUSSIAN_TAIL = 1e-6;

/**
 * Edge spread of a slit, a round aperture or a Gaussian beam, along the track.
 *
 * @source slit and circular segment: closed forms of plane geometry; Gaussian: knife-edge measurement of a beam,
 * T(x) = erfc(√2 x/w)/2 with w the 1/e² radius.
 * @check test/published/knife-edge, test/published/circular-segment
 */
export function edgeSpread(aperture: Aperture): EdgeSpread {
  switch (aperture.shape) {
    case 'slit':
      return slitSpread(aperture.widthMm);
    case 'round':
      return roundSpread(aperture.diameterMm / 2);
    case 'gaussian':
      return gaussianSpread(aperture.radiusMm);
  }
}

/** Edge spread across the track, where rings and not radial edges cut the spot. */
export function spreadAcross(aperture: Aperture): EdgeSpread {
  return aperture.shape === 'slit' ? slitSpread(aperture.lengthMm) : edgeSpread(aperture);
}

function slitSpread(widthMm: number): EdgeSpread {
  return {
    transmitted: (x) => Math.min(1, Math.max(0, 0.5 - x / widthMm)),
    edgeAt: (light) => outside(light) ?? widthMm * (0.5 - light),
    reachMm: widthMm / 2,
  };
}

function roundSpread(radiusMm: number): EdgeSpread {
  return {
    transmitted: (x) => {
      const u = x / radiusMm;
      if (u >= 1) return 0;
      if (u <= -1) return 1;
      return (Math.acos(u) - u * Math.sqrt(1 - u * u)) / Math.PI;
    },
    edgeAt: (light) => outside(light) ?? radiusMm * segmentEdge(light),
    reachMm: radiusMm,
  };
}

function gaussianSpread(radiusMm: number): EdgeSpread {
  return {
    transmitted: (x) => erfc((Math.SQRT2 * x) / radiusMm) / 2,
    edgeAt: (light) => outside(light) ?? (-radiusMm / 2) * normalQuantile(light, 0, 1),
    reachMm: (-radiusMm / 2) * normalQuantile(GAUSSIAN_TAIL, 0, 1),
  };
}

/** No edge lets less than nothing or more than all through: never reached, however far it moves. */
function outside(light: number): number | null {
  if (light < 0) return Infinity;
  return light > 1 ? -Infinity : null;
}

/**
 * Distance from the middle, in radii, of the chord that leaves a share of a circle open.
 *
 * With u = cos(φ/2) the share is (φ − sin φ)/2π. That function is convex up to half open and its cube-root start
 * lies below the answer, so Newton steps first land above it and then fall to it without turning back.
 */
function segmentEdge(light: number): number {
  if (light > 0.5) return -segmentEdge(1 - light);
  if (light === 0) return 1;
  const goal = 2 * Math.PI * light;
  let phi = Math.cbrt(6 * goal);
  for (let step = 0; step < 12; step++) {
    const next = phi - (phi - Math.sin(phi) - goal) / (1 - Math.cos(phi));
    if (Math.abs(next - phi) < 1e-14) break;
    phi = next;
  }
  return Math.cos(phi / 2);
}
