import type { DiscPlan } from '../../disc/index.ts';
import type { Aperture, Penumbra } from '../headSpec.ts';
import { edgeSpread, penumbraMm, spreadAcross, type EdgeSpread } from './edgeSpread.ts';
import { ringSpread } from './ringSpread.ts';

/** Light through a neighbour's windows that moves no edge worth speaking of, even where a channel changes at 1 %. [-] */
export const SPILL_UNSEEN = 3e-5;

/** A part of a track into whose ring a channel's spot may reach. */
export interface Neighbour {
  readonly track: number;
  /** Radius of the middle of the part, and how its edges pass there. [mm] */
  readonly radiusMm: number;
  readonly spread: EdgeSpread;
  /**
   * Light through an open window of that part, as a share of that through one of the channel's own.
   *
   * @param acrossMm - How far outwards of its place the channel stands. [mm]
   */
  share(acrossMm: number): number;
}

/** Standard deviations of a channel's radius at which a neighbour is still looked for. Common practice, no source. */
const FAR_SIGMA = 4;

/**
 * Tracks that a channel's spot may reach into, standing up to four standard deviations off its radius.
 *
 * @param spot - Aperture, size of the light, and how far off its radius a channel stands. [mm]
 * @source derived: share of the spot between the two radii of the ring: with its arcs as they are for a
 * spot with a rim, each taken as a straight line at its mean place for a beam.
 * @check test/published/spill
 */
export function neighboursOf(
  disc: DiscPlan,
  track: number,
  spot: { readonly aperture: Aperture; readonly penumbra: Penumbra | null; readonly radialSdMm: number },
): Neighbour[] {
  const { aperture, penumbra } = spot;
  const own = disc.tracks[track]!;
  const across = spreadAcross(aperture);
  const beyond = (radiusMm: number, at: number): number =>
    across.transmitted(radiusMm - at - bulgeMm(aperture, radiusMm - at, radiusMm));
  const within = (ring: Ring, at: number): number =>
    beyond(ring.innerRadiusMm, at) - beyond(ring.outerRadiusMm, at);
  const off = FAR_SIGMA * spot.radialSdMm;
  return disc.tracks.flatMap((ring): Neighbour[] => {
    if (ring.track === track || ring.midRadiusMm === own.midRadiusMm) return [];
    const shareOf = (part: Ring, acrossMm: number): number => {
      const at = own.midRadiusMm + acrossMm;
      return within(part, at) / Math.max(1e-9, within(own, at));
    };
    if (Math.max(shareOf(ring, off), shareOf(ring, -off), shareOf(ring, 0)) < SPILL_UNSEEN) return [];
    const reachMm = across.reachMm + off + ARC_ROOM_MM;
    const parts = aperture.shape === 'gaussian' ? BEAM_PARTS : 1;
    return partsOf(ring, own.midRadiusMm, reachMm, parts).map((part) => {
      const radiusMm = own.midRadiusMm + middleOfLight(across, part, own.midRadiusMm);
      const rimmed = rimmedOf(aperture, own, part, { radiusMm, softMm: penumbraMm(penumbra) });
      if (rimmed === null) {
        const spread = edgeSpread(aperture, { penumbra });
        return { track: ring.track, radiusMm, spread, share: (acrossMm) => shareOf(part, acrossMm) };
      }
      // Straight lines tell how the share grows as a channel stands off its place, the arcs what it is on it.
      const more = rimmed.share - shareOf(part, 0);
      const share = (acrossMm: number): number => Math.max(0, shareOf(part, acrossMm) + more);
      return { track: ring.track, radiusMm, spread: rimmed.spread, share };
    });
  });
}

/** Spread and share of a slit or a round spot in a neighbour's ring; `null` for a beam, or where they do not meet. */
function rimmedOf(
  aperture: Aperture,
  own: Ring & { readonly midRadiusMm: number },
  ring: Ring,
  at: { readonly radiusMm: number; readonly softMm: number },
): { readonly spread: EdgeSpread; readonly share: number } | null {
  if (aperture.shape === 'gaussian') return null;
  const spotRadiusMm = own.midRadiusMm;
  const { innerRadiusMm, outerRadiusMm } = own;
  const there = ringSpread(aperture, { ...at, ...ring, spotRadiusMm });
  const here = ringSpread(aperture, { ...at, innerRadiusMm, outerRadiusMm, spotRadiusMm });
  return there && here ? { spread: there.spread, share: there.areaMm2 / here.areaMm2 } : null;
}

/** An arc leaves the end of a spot a little farther out than it crosses the middle. [mm] */
const ARC_ROOM_MM = 0.1;

/** Rings that a neighbour under a beam is cut into: its edges stand farther apart the farther out they are seen. [-] */
const BEAM_PARTS = 8;

type Ring = { readonly innerRadiusMm: number; readonly outerRadiusMm: number };

function partsOf({ innerRadiusMm, outerRadiusMm }: Ring, at: number, reachMm: number, parts: number): Ring[] {
  const [low, high] = [Math.max(innerRadiusMm, at - reachMm), Math.min(outerRadiusMm, at + reachMm)];
  if (low >= high) return [];
  return Array.from({ length: parts }, (_, i) => ({
    innerRadiusMm: low + ((high - low) * i) / parts,
    outerRadiusMm: low + ((high - low) * (i + 1)) / parts,
  }));
}

/** Where half of a part's light falls farther in and half farther out, from the spot's middle. [mm] */
function middleOfLight(
  { transmitted }: EdgeSpread,
  { innerRadiusMm, outerRadiusMm }: Ring,
  at: number,
): number {
  let [low, high] = [innerRadiusMm - at, outerRadiusMm - at];
  const half = (transmitted(low) + transmitted(high)) / 2;
  if (transmitted(low) - transmitted(high) < 1e-12) return (low + high) / 2;
  for (let step = 0; step < 40; step++) {
    const middle = (low + high) / 2;
    if (transmitted(middle) > half) low = middle;
    else high = middle;
  }
  return low;
}

/**
 * How much nearer the shaft an arc lies on average over the spot than where it crosses the spot's middle. [mm]
 *
 * @source derived: y²/2R over the spot, y² being w²/12 along a slit, (w/2)² in a beam and a third of the half chord's square.
 */
function bulgeMm(aperture: Aperture, atMm: number, radiusMm: number): number {
  switch (aperture.shape) {
    case 'slit':
      return aperture.widthMm ** 2 / (24 * radiusMm);
    case 'round':
      return Math.max(0, (aperture.diameterMm / 2) ** 2 - atMm ** 2) / (6 * radiusMm);
    case 'gaussian':
      return aperture.radiusMm ** 2 / (8 * radiusMm);
  }
}
