import { levelAt } from '../../src/core/codes/index.ts';
import { isWindow, type DiscPlan } from '../../src/core/disc/index.ts';
import type { Aperture } from '../../src/core/head/index.ts';

/** Nodes and weights of the four-point Gauss-Legendre rule on -1..1. @source Abramowitz & Stegun 1964, table 25.4 */
const NODES: readonly (readonly [number, number])[] = [
  [-0.861136311594053, 0.347854845137454],
  [-0.339981043584856, 0.652145154862546],
  [0.339981043584856, 0.652145154862546],
  [0.861136311594053, 0.347854845137454],
];

/** Integral of a function over a stretch cut into panels, each by the four-point rule. */
function integral(from: number, to: number, panels: number, of: (x: number) => number): number {
  const half = (to - from) / panels / 2;
  let sum = 0;
  for (let panel = 0; panel < panels; panel++) {
    const middle = from + (2 * panel + 1) * half;
    for (const [node, weight] of NODES) sum += weight * of(middle + half * node);
  }
  return sum * half;
}

/** How far a spot reaches from its middle across and along the track. [mm] */
function reachOf(aperture: Aperture): { readonly across: number; readonly along: number } {
  switch (aperture.shape) {
    case 'slit':
      return { across: aperture.lengthMm / 2, along: aperture.widthMm / 2 };
    case 'round':
      return { across: aperture.diameterMm / 2, along: aperture.diameterMm / 2 };
    case 'gaussian':
      return { across: BEAM_RADII * aperture.radiusMm, along: BEAM_RADII * aperture.radiusMm };
  }
}

/** 1/e² radii of a beam that are added up; 2e-8 of its light lies beyond. [-] */
const BEAM_RADII = 3;

/** Light of a spot at a place of it, in any one unit. */
function brightness(aperture: Aperture, along: number, across: number): number {
  switch (aperture.shape) {
    case 'slit':
      return Math.abs(along) < aperture.widthMm / 2 && Math.abs(across) < aperture.lengthMm / 2 ? 1 : 0;
    case 'round':
      return Math.hypot(along, across) < aperture.diameterMm / 2 ? 1 : 0;
    case 'gaussian':
      return Math.exp((-2 * (along ** 2 + across ** 2)) / aperture.radiusMm ** 2);
  }
}

/** Places at which a yes or no changes, found on a grid and halved down to rounding. */
function changesOf(from: number, to: number, is: (x: number) => boolean): number[] {
  const looks = 60;
  const at = (i: number): number => from + ((to - from) * i) / looks;
  const changes: number[] = [];
  for (let i = 0; i < looks; i++) {
    let [low, high] = [at(i), at(i + 1)];
    const before = is(low);
    if (before === is(high)) continue;
    for (let step = 0; step < 40; step++) {
      const middle = (low + high) / 2;
      if (is(middle) === before) low = middle;
      else high = middle;
    }
    changes.push((low + high) / 2);
  }
  return changes;
}

/** What a spot sees, and how soft its light makes an edge. */
export interface SpotOverDisc {
  readonly disc: DiscPlan;
  readonly track: number;
  readonly aperture: Aperture;
  /** Disc angle under the spot's middle. [deg] */
  readonly angle: number;
  /** Width of the half shadow; a light of some size moves the spot evenly over it. [mm] */
  readonly softMm?: number;
}

/**
 * Light through all windows under a spot over that through an open ring of its own: the spot's brightness added up over the
 * code itself along arcs about the shaft, ring by ring. No edge spread, no sum over edges. Good to 1e-6 or so. [-]
 */
export function lightIntegral(spot: SpotOverDisc): number {
  const { disc, track, softMm = 0 } = spot;
  const shifted = (of: (moved: number) => number): number =>
    softMm === 0 ? of(0) : integral(-softMm / 2, softMm / 2, 6, of) / softMm;
  let [open, own] = [0, 0];
  for (const ring of disc.tracks) {
    const isWindowAt = (deg: number): boolean =>
      isWindow(levelAt(disc.code.tracks[ring.track]!, spot.angle + deg), disc.spec);
    open += shifted((moved) => ringLight(spot, ring, moved, isWindowAt));
    if (ring.track === track) own = shifted((moved) => ringLight(spot, ring, moved, () => true));
  }
  return open / own;
}

const DEG = 180 / Math.PI;

/** Light of a spot, moved along its track, through what is open of one ring. */
function ringLight(
  { disc, track, aperture }: SpotOverDisc,
  { innerRadiusMm, outerRadiusMm }: DiscPlan['tracks'][number],
  moved: number,
  isOpenAt: (deg: number) => boolean,
): number {
  const { midRadiusMm } = disc.tracks[track]!;
  const { across, along } = reachOf(aperture);
  const near = Math.max(innerRadiusMm, midRadiusMm - across);
  const far = Math.min(outerRadiusMm, Math.hypot(midRadiusMm + across, along + Math.abs(moved)));
  if (near >= far) return 0;
  const arcLight = (radius: number): number => {
    const reach = Math.min(1, (along + Math.abs(moved) + 0.01) / radius);
    const light = (turn: number): number =>
      brightness(aperture, radius * Math.sin(turn) - moved, radius * Math.cos(turn) - midRadiusMm);
    const end = Math.asin(reach);
    const isLit = (turn: number): boolean => light(turn) > 0 && isOpenAt(turn * DEG);
    // Rim and edges each by itself: a sliver between the two may be narrower than the grid.
    const rims = changesOf(-end, end, (turn) => light(turn) > 0);
    const edges = changesOf(-end, end, (turn) => isOpenAt(turn * DEG));
    const stops = [-end, ...[...rims, ...edges].sort((a, b) => a - b), end];
    let sum = 0;
    for (let i = 1; i < stops.length; i++) {
      const [from, to] = [stops[i - 1]!, stops[i]!];
      if (isLit((from + to) / 2)) sum += integral(from, to, aperture.shape === 'gaussian' ? 8 : 1, light);
    }
    return radius * sum;
  };
  // Arcs stand denser towards the ends of each stretch, where a spot's chords grow at once.
  const stretch = (from: number, to: number): number => {
    const [middle, half] = [(from + to) / 2, (to - from) / 2];
    const panels = aperture.shape === 'gaussian' ? 6 : 20;
    return integral(-Math.PI / 2, Math.PI / 2, panels, (turn) => {
      return half * Math.cos(turn) * arcLight(middle + half * Math.sin(turn));
    });
  };
  const corners = [midRadiusMm + across, Math.hypot(midRadiusMm - across, along)];
  const stops = [near, ...corners.filter((at) => at > near && at < far).sort((a, b) => a - b), far];
  return stops.slice(1).reduce((sum, to, i) => sum + stretch(stops[i]!, to), 0);
}
