import erfc from '@stdlib/math-base-special-erfc';
import normalQuantile from '@stdlib/stats-base-dists-normal-quantile';
import type { Aperture, Penumbra } from '../headSpec.ts';
import { areaBeyond, slitAreaTwice } from './spotArea.ts';

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

/** What makes the edge of a spot softer than its opening alone. */
export interface EdgeSetting {
  /** Radius of the track: edges are radial, so a long slit meets them askew. Straight edges where left out. [mm] */
  readonly radiusMm?: number;
  readonly penumbra?: Penumbra | null;
}

/**
 * Edge spread of a slit, a round aperture or a Gaussian beam, along the track.
 *
 * @param setting - Radius of the track and size of the light; a straight edge in parallel light where left out. [mm]
 * @source slit and circular segment: closed forms of plane geometry; Gaussian: knife-edge measurement of a beam,
 * T(x) = erfc(√2 x/w)/2 with w the 1/e² radius; penumbra: source size times gap over distance, evenly spread.
 * @check test/published/knife-edge, test/published/circular-segment, test/published/penumbra
 */
export function edgeSpread(aperture: Aperture, { radiusMm, penumbra = null }: EdgeSetting = {}): EdgeSpread {
  const softMm = penumbraMm(penumbra);
  if (softMm > 0) return softSpread(aperture, softMm, radiusMm);
  switch (aperture.shape) {
    case 'slit':
      return radiusMm === undefined || aperture.lengthMm >= 2 * radiusMm
        ? slitSpread(aperture.widthMm)
        : askewSlitSpread(aperture.widthMm, aperture.lengthMm, radiusMm);
    case 'round':
      return roundSpread(aperture.diameterMm / 2);
    case 'gaussian':
      return gaussianSpread(aperture.radiusMm);
  }
}

/**
 * Width of the half shadow of an edge at the sensor's opening. [mm]
 *
 * @source derived: similar triangles, s g/D for a light of size s, g behind the edge and D before it.
 * @check test/published/penumbra (3 mm, 2 mm, 10 mm: 0.6 mm)
 */
export function penumbraMm(penumbra: Penumbra | null): number {
  if (penumbra === null) return 0;
  return (penumbra.sourceMm * penumbra.discToApertureMm) / penumbra.sourceToDiscMm;
}

/** Edge spread across the track, where rings and not radial edges cut the spot. */
export function spreadAcross(aperture: Aperture): EdgeSpread {
  return aperture.shape === 'slit' ? slitSpread(aperture.lengthMm) : edgeSpread(aperture);
}

/**
 * A slit whose long sides are parallel to the radius through its middle, met by an edge that is a radius itself.
 *
 * @source derived: with t the slope of the edge, the slit's light beyond it is the mean of the ramp from t (r − l/2) to
 * t (r + l/2): the plain ramp of r t while all of the edge is inside, and a quadratic where it leaves by an end.
 * @check src/core/head/light/seenTrack.test.ts
 */
function askewSlitSpread(widthMm: number, lengthMm: number, radiusMm: number): EdgeSpread {
  const near = radiusMm - lengthMm / 2;
  const far = radiusMm + lengthMm / 2;
  const half = widthMm / 2;
  const wholeShare = 0.5 - (half / far) * (radiusMm / widthMm);
  const transmitted = (x: number): number => {
    if (x < 0) return 1 - transmitted(-x);
    if (x >= radiusMm) return 0;
    const slope = x / Math.sqrt(radiusMm * radiusMm - x * x);
    if (slope * near >= half) return 0;
    if (slope * far <= half) return 0.5 - (radiusMm * slope) / widthMm;
    return (half - slope * near) ** 2 / (2 * widthMm * slope * lengthMm);
  };
  const slopeAt = (light: number): number => {
    if (light >= wholeShare) return (widthMm * (0.5 - light)) / radiusMm;
    const b = widthMm * (near + 2 * lengthMm * light);
    // At light 0 both terms are equal but for rounding.
    return (b - Math.sqrt(Math.max(0, b * b - widthMm * widthMm * near * near))) / (2 * near * near);
  };
  const edgeAt = (light: number): number => {
    if (light > 0.5) return outside(light) ?? -edgeAt(1 - light);
    const beyond = outside(light);
    if (beyond !== null) return beyond;
    const slope = slopeAt(light);
    return (radiusMm * slope) / Math.sqrt(1 + slope * slope);
  };
  return { transmitted, edgeAt, reachMm: edgeAt(0) };
}

/** Any spot in the light of a source of some size: its shadow moves evenly over `softMm`. */
function softSpread(aperture: Aperture, softMm: number, radiusMm?: number): EdgeSpread {
  const sharp = edgeSpread(aperture, radiusMm === undefined ? {} : { radiusMm });
  const transmitted = (x: number): number => {
    if (aperture.shape === 'slit' && radiusMm !== undefined && x !== 0) {
      const slope = Math.abs(x) / Math.sqrt(Math.max(1e-12, radiusMm * radiusMm - x * x));
      const askewMm = slope * aperture.lengthMm;
      if (askewMm > LEAST_ASKEW_MM) {
        const share = twiceSoft(aperture.widthMm, slope * radiusMm, softMm, askewMm);
        return x > 0 ? share : 1 - share;
      }
    }
    return (areaBeyond(aperture, x - softMm / 2) - areaBeyond(aperture, x + softMm / 2)) / softMm;
  };
  const reachMm = sharp.reachMm + softMm / 2 + (aperture.shape === 'slit' ? softMm / 4 : 0);
  return { transmitted, edgeAt: (light) => outside(light) ?? solved(transmitted, light, reachMm), reachMm };
}

/** A slit less askew than this is as good as straight, and the double sum would lose its digits. [mm] */
const LEAST_ASKEW_MM = 1e-3;

function twiceSoft(width: number, x: number, soft: number, askew: number): number {
  const corner = (a: number, b: number): number => slitAreaTwice(width, x + (a * soft) / 2 + (b * askew) / 2);
  return (corner(-1, -1) - corner(1, -1) - corner(-1, 1) + corner(1, 1)) / (soft * askew);
}

/** Where a falling function passes a value, by halving. [mm] */
function solved(transmitted: (x: number) => number, light: number, reachMm: number): number {
  let [low, high] = [-reachMm, reachMm];
  for (let step = 0; step < 50; step++) {
    const middle = (low + high) / 2;
    if (transmitted(middle) > light) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
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
