import type { CodeTable } from '../../codes/index.ts';
import { leastDrawn } from '../check/leastDrawn.ts';
import type { StripLayout, TrackPlan } from '../discPlan.ts';
import type { DiscSpec, StripSpec } from '../discSpec.ts';
import type { Point } from '../pen.ts';
import { layTracks, trackRadiiMm } from './layTracks.ts';

/** Radius of a drum that unrolls to one turn of a strip. [mm] @source circumference over 2π. */
export function drumRadiusMm({ turnLengthMm }: StripSpec): number {
  return turnLengthMm / (2 * Math.PI);
}

/** Height of a strip's lower edge, as a radius of the disc of the same sizes: a rim lies below its tracks too. [mm] */
function lowerEdgeMm({ hubDiameterMm, rimMm }: DiscSpec): number {
  return hubDiameterMm / 2 - rimMm;
}

/** Where a place of the disc of the same sizes lies on a strip. [mm] */
export function stripPoint(spec: DiscSpec, strip: StripSpec, radiusMm: number, angleDeg: number): Point {
  return { xMm: (angleDeg * strip.turnLengthMm) / 360, yMm: radiusMm - lowerEdgeMm(spec) };
}

/** Angles beyond the head's reference line at which the channels look: how much pattern must follow. [deg] */
function reachDeg({ channels }: CodeTable): { behind: number; ahead: number } {
  const angles = channels.map(({ angleDeg }) => angleDeg);
  return { behind: Math.max(0, ...angles.map((angle) => -angle)), ahead: Math.max(0, ...angles) };
}

/**
 * The tracks of a code unrolled along a strip: as wide as on the disc of the same sizes, with a rim along both edges.
 *
 * The pattern goes on beyond one turn as far as the channels reach, and `leadMm` more at either end; there the strip is
 * closed by as much as along its edges.
 *
 * @param code - Code to be laid on the strip.
 * @param spec - Sizes of the disc it is unrolled from; its tracks must fit. [mm]
 * @param strip - Travel and lead. [mm]
 * @returns Tracks as a reader sees them, all at the radius of the drum, and where they lie on the strip.
 */
export function layStrip(
  code: CodeTable,
  spec: DiscSpec,
  strip: StripSpec,
): { readonly tracks: TrackPlan[]; readonly layout: StripLayout } {
  const drum = drumRadiusMm(strip);
  const tracks = layTracks(code, spec).map((track): TrackPlan => {
    const half = (track.outerRadiusMm - track.innerRadiusMm) / 2;
    const radii = { innerRadiusMm: drum - half, outerRadiusMm: drum + half };
    const windows = track.windows.map(({ fromDeg, toDeg }) => ({ ...radii, fromDeg, toDeg }));
    return { ...track, ...radii, midRadiusMm: drum, windows };
  });
  const mmPerDeg = strip.turnLengthMm / 360;
  const { behind, ahead } = reachDeg(code);
  const leadDeg = strip.leadMm / mmPerDeg;
  const base = lowerEdgeMm(spec);
  const bands = trackRadiiMm(code.tracks.length, spec).map(([inner, outer]) => ({
    lowMm: inner - base,
    highMm: outer - base,
  }));
  const heightMm = spec.diameterMm / 2 - base;
  const capDeg = spec.rimMm / mmPerDeg;
  const beyond = leadDeg + capDeg;
  const leastWindowDeg = leastDrawn(spec).windowMm / mmPerDeg;
  const ends = { fromDeg: -behind - beyond, toDeg: 360 + ahead + beyond };
  return { tracks, layout: { mmPerDeg, ...ends, capDeg, leastWindowDeg, heightMm, bands } };
}
