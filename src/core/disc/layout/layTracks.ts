import type { CodeTable } from '../../codes/index.ts';
import type { TrackPlan } from '../discPlan.ts';
import type { DiscSpec } from '../discSpec.ts';
import { isWindow, stretchesWhere } from './windows.ts';

/**
 * Radial width of each track: the room between hub and rim, less the webs, shared equally.
 *
 * @param trackCount - Tracks of the code. [-], n ≥ 1
 * @param spec - The disc as asked for.
 * @returns Width; below 0 where hub, webs and rim leave no room. [mm]
 */
export function bandWidthMm(trackCount: number, spec: DiscSpec): number {
  const room = spec.diameterMm / 2 - spec.rimMm - spec.hubDiameterMm / 2;
  return (room - (trackCount - 1) * spec.webMm) / trackCount;
}

/**
 * Inner radius of each track, in the order of the code table; track 0 lies innermost unless the finest does.
 *
 * @returns Radii. [mm], n = trackCount
 */
export function innerRadiiMm(trackCount: number, spec: DiscSpec): number[] {
  const pitch = bandWidthMm(trackCount, spec) + spec.webMm;
  return Array.from({ length: trackCount }, (_, track) => {
    const fromInside = spec.finest === 'outside' ? track : trackCount - 1 - track;
    return spec.hubDiameterMm / 2 + fromInside * pitch;
  });
}

/**
 * Inner and outer radius of each track, in the order of the code table.
 *
 * @returns Pairs of radii. [mm], n = trackCount
 */
export function trackRadiiMm(trackCount: number, spec: DiscSpec): [inner: number, outer: number][] {
  const band = bandWidthMm(trackCount, spec);
  const innerRadii = innerRadiiMm(trackCount, spec);
  return innerRadii.map((inner) => {
    // With no web, neighbours must share one radius to the last bit.
    const next = spec.webMm === 0 ? Math.min(...innerRadii.filter((other) => other > inner)) : Infinity;
    return [inner, Number.isFinite(next) ? next : inner + band];
  });
}

/**
 * Where each track and its windows lie.
 *
 * @param code - Code to be laid on the disc.
 * @param spec - The disc as asked for; its tracks must fit.
 * @returns Tracks in the order of the code table. n = tracks of the code
 */
export function layTracks(code: CodeTable, spec: DiscSpec): TrackPlan[] {
  const radii = trackRadiiMm(code.tracks.length, spec);
  return code.tracks.map((track, index) => {
    const [innerRadiusMm, outerRadiusMm] = radii[index]!;
    const windows = stretchesWhere(track, (level) => isWindow(level, spec));
    return {
      track: index,
      innerRadiusMm,
      outerRadiusMm,
      midRadiusMm: (innerRadiusMm + outerRadiusMm) / 2,
      windows: windows.map((window) => ({ innerRadiusMm, outerRadiusMm, ...window })),
    };
  });
}
