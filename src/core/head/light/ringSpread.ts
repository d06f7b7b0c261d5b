import type { Aperture } from '../headSpec.ts';
import type { EdgeSpread } from './edgeSpread.ts';

/** A spot with a rim: a slit or a round opening. */
type RimmedAperture = Exclude<Aperture, { shape: 'gaussian' }>;

/** A ring of the disc and the spot that may see part of it. [mm] */
export interface RingUnderSpot {
  readonly innerRadiusMm: number;
  readonly outerRadiusMm: number;
  /** Where the spot's middle stands. */
  readonly spotRadiusMm: number;
  /** Radius at which places of the spread are told. */
  readonly radiusMm: number;
  /** Width of the half shadow. */
  readonly softMm: number;
}

/** The part of a spot in a ring, as the ring's radial edges pass it. */
export interface RingSpread {
  readonly spread: EdgeSpread;
  /** Area of the spot within the ring. [mm²] */
  readonly areaMm2: number;
}

/** Steps of the table over the spot's angle. [-] */
const STEPS = 400;
/** Panels that the half shadow is cut into: a slit's side comes into a ray at once. [-] */
const SHADOW_PANELS = 8;
/** Nodes and weights of one, on 0..1, over which the half shadow is averaged. @source Gauss-Legendre, Abramowitz & Stegun table 25.4 */
const SHADOW = [
  [0.019855071751232, 0.050614268145188],
  [0.101666761293187, 0.111190517226687],
  [0.237233795041836, 0.156853322938944],
  [0.408282678752175, 0.181341891689181],
  [0.591717321247825, 0.181341891689181],
  [0.762766204958164, 0.156853322938944],
  [0.898333238706813, 0.111190517226687],
  [0.980144928248768, 0.050614268145188],
] as const;

/**
 * How a ring's radial edges pass the part of a slit or a round spot that lies in it, arcs and radii taken as they are.
 *
 * In polar coordinates about the shaft both the ring's arcs and its edges are straight, so that the light beyond an edge at
 * an angle is one sum over the angles beyond it.
 *
 * @returns `null` where the spot does not touch the ring, or is so large that it reaches round the shaft.
 * @source derived: dA/dφ = (ρ₂² − ρ₁²)/2 along the ray at φ, ρ₁ and ρ₂ where it enters and leaves spot and ring.
 * @check test/published/spill (the spot added up over the whole disc, to 1e-4)
 */
export function ringSpread(aperture: RimmedAperture, ring: RingUnderSpot): RingSpread | null {
  const { radiusMm, softMm } = ring;
  const farMm = halfAlong(aperture) + softMm / 2;
  const nearestMm = Math.max(ring.innerRadiusMm, ring.spotRadiusMm - halfAcross(aperture));
  if (!(nearestMm > farMm)) return null;
  const far = Math.asin(farMm / nearestMm);
  const step = (2 * far) / STEPS;
  const density = Float64Array.from({ length: 2 * STEPS + 1 }, (_, i) =>
    softDensity(aperture, ring, -far + (i * step) / 2),
  );
  const passed = new Float64Array(STEPS + 1);
  for (let i = 0; i < STEPS; i++) {
    const [a, b, c] = [density[2 * i]!, density[2 * i + 1]!, density[2 * i + 2]!];
    passed[i + 1] = passed[i]! + (step * (a + 4 * b + c)) / 6;
  }
  const areaMm2 = passed[STEPS]!;
  if (!(areaMm2 > 0)) return null;
  const transmitted = (x: number): number => {
    const at = (Math.asin(Math.max(-1, Math.min(1, x / radiusMm))) + far) / step;
    if (at <= 0) return 1;
    if (at >= STEPS) return 0;
    const i = Math.floor(at);
    const share = at - i;
    const slopes = [density[2 * i]! * step, density[2 * i + 2]! * step] as const;
    return 1 - between(passed[i]!, passed[i + 1]!, slopes, share) / areaMm2;
  };
  const reachMm = radiusMm * Math.sin(far);
  return { areaMm2, spread: { transmitted, edgeAt: inverse(transmitted, reachMm), reachMm } };
}

/** Cubic between two values with their slopes over the step. */
function between(from: number, to: number, [rise, end]: readonly [number, number], t: number): number {
  const u = 1 - t;
  return from * u * u * (1 + 2 * t) + to * t * t * (3 - 2 * t) + t * u * (rise * u - end * t);
}

/** Place at which a falling function has a value; no edge is far enough for a value outside 0..1. */
function inverse(transmitted: (x: number) => number, reachMm: number): (light: number) => number {
  return (light) => {
    if (light < 0) return Infinity;
    if (light > 1) return -Infinity;
    let [low, high] = [-reachMm, reachMm];
    for (let halving = 0; halving < 50; halving++) {
      const middle = (low + high) / 2;
      if (transmitted(middle) > light) low = middle;
      else high = middle;
    }
    return (low + high) / 2;
  };
}

function halfAlong(aperture: RimmedAperture): number {
  return aperture.shape === 'slit' ? aperture.widthMm / 2 : aperture.diameterMm / 2;
}

function halfAcross(aperture: RimmedAperture): number {
  return aperture.shape === 'slit' ? aperture.lengthMm / 2 : aperture.diameterMm / 2;
}

/** Area a radian of the spot in the ring along a ray, the spot moved evenly by the half shadow. [mm²] */
function softDensity(aperture: RimmedAperture, ring: RingUnderSpot, angle: number): number {
  if (ring.softMm === 0) return densityAt(aperture, ring, angle, 0);
  let sum = 0;
  for (let panel = 0; panel < SHADOW_PANELS; panel++) {
    for (const [at, weight] of SHADOW) {
      const moved = ((panel + at) / SHADOW_PANELS - 0.5) * ring.softMm;
      sum += (weight / SHADOW_PANELS) * densityAt(aperture, ring, angle, moved);
    }
  }
  return sum;
}

/** The same for a spot whose middle stands `moved` along the track. */
function densityAt(aperture: RimmedAperture, ring: RingUnderSpot, angle: number, moved: number): number {
  const [enters, leaves] = rayIn(aperture, ring.spotRadiusMm, angle, moved);
  const from = Math.max(enters, ring.innerRadiusMm);
  const to = Math.min(leaves, ring.outerRadiusMm);
  return to > from ? (to * to - from * from) / 2 : 0;
}

/** Where a ray from the shaft enters and leaves the spot. [mm] */
function rayIn(aperture: RimmedAperture, spotMm: number, angle: number, moved: number): [number, number] {
  const [sin, cos] = [Math.sin(angle), Math.cos(angle)];
  if (aperture.shape === 'round') {
    const middle = spotMm * cos + moved * sin;
    const half = (aperture.diameterMm / 2) ** 2 - (spotMm * sin - moved * cos) ** 2;
    return half > 0 ? [middle - Math.sqrt(half), middle + Math.sqrt(half)] : [0, 0];
  }
  const [near, far] = [(spotMm - aperture.lengthMm / 2) / cos, (spotMm + aperture.lengthMm / 2) / cos];
  const sides = [moved - aperture.widthMm / 2, moved + aperture.widthMm / 2];
  if (Math.abs(sin) < 1e-12) return sides[0]! < 0 && sides[1]! > 0 ? [near, far] : [0, 0];
  const [first, second] = sides.map((side) => side / sin).sort((a, b) => a - b);
  return [Math.max(near, first!), Math.min(far, second!)];
}
