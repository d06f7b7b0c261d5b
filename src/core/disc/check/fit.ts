import type { CodeTable } from '../../codes/index.ts';
import { degToRad, showMm, wrapDegrees, type Degrees } from '../../units/index.ts';
import type { DiscSpec } from '../discSpec.ts';
import { drumRadiusMm, stripPoint } from '../layout/layStrip.ts';
import { bandWidthMm, innerRadiiMm } from '../layout/layTracks.ts';
import { isWindow, stretchesWhere } from '../layout/windows.ts';
import { discPlace, stripPlace, type Fault, type FaultPlace } from './fault.ts';
import { leastDrawn } from './leastDrawn.ts';

/** Shortest window and shortest land of one track; 360 where it has only one, infinite where it has none. [deg] */
export interface Shortest {
  readonly windowDeg: Degrees;
  readonly landDeg: Degrees;
  /** Where the shortest window, and the shortest land, has its middle. [deg] */
  readonly windowAtDeg: Degrees;
  readonly landAtDeg: Degrees;
}

/** Hair by which rounding may miss a minimum that is met. [mm] */
const HAIR_MM = 1e-9;

/**
 * Shortest marks of each track.
 *
 * @returns Window and land. [deg], n = tracks of the code
 */
export function shortestMarks(code: CodeTable, spec: Pick<DiscSpec, 'windowLevel'>): Shortest[] {
  const least = (track: CodeTable['tracks'][number], windows: boolean) =>
    stretchesWhere(track, (level) => isWindow(level, spec) === windows).reduce(
      (shortest, { fromDeg, toDeg }) =>
        toDeg - fromDeg < shortest.span
          ? { span: toDeg - fromDeg, atDeg: wrapDegrees((fromDeg + toDeg) / 2) }
          : shortest,
      { span: Infinity, atDeg: 0 },
    );
  return code.tracks.map((track) => {
    const [window, land] = [least(track, true), least(track, false)];
    return { windowDeg: window.span, landDeg: land.span, windowAtDeg: window.atDeg, landAtDeg: land.atDeg };
  });
}

/** Radial width that a track needs: its windows must open, and with no web its lands are the webs. [mm] */
function leastBandMm(spec: DiscSpec): number {
  const least = leastDrawn(spec);
  return spec.webMm > 0 ? least.windowMm : Math.max(least.windowMm, least.webMm);
}

function bandFault(trackCount: number, spec: DiscSpec): Fault | null {
  const band = bandWidthMm(trackCount, spec);
  const least = leastBandMm(spec);
  if (band >= least - HAIR_MM) return null;
  const room = spec.diameterMm / 2 - spec.rimMm - spec.hubDiameterMm / 2;
  const most = Math.max(0, Math.floor((room + spec.webMm) / (least + spec.webMm) + HAIR_MM));
  return {
    code: 'disc/tracks-do-not-fit',
    what: 'The tracks do not fit between hub and rim.',
    where: 'disc.diameterMm',
    got: `${trackCount} tracks in ${showMm(room)} from hub to rim, ${showMm(band)} each`,
    allowed: `at most ${most} ${most === 1 ? 'track' : 'tracks'} there, ${showMm(least)} each and ${showMm(spec.webMm)} between`,
    at: [placeOn(spec, spec.hubDiameterMm / 2 + Math.max(0, room) / 2, 90)],
  };
}

/** A place of the pattern on the drawing; a strip has the tracks of the disc of the same sizes, unrolled. */
function placeOn(spec: DiscSpec, radiusMm: number, angleDeg: Degrees): FaultPlace {
  if (!spec.strip) return discPlace(radiusMm, angleDeg);
  return stripPlace(stripPoint(spec, spec.strip, radiusMm, angleDeg));
}

/** Radius at which the length of a mark is least: the inner edge of its track, or the drum of a strip. [mm] */
function alongRadiiMm(trackCount: number, spec: DiscSpec): number[] {
  const inner = innerRadiiMm(trackCount, spec);
  const { strip } = spec;
  return strip ? inner.map(() => drumRadiusMm(strip)) : inner;
}

function arcFault(kind: 'window' | 'land', shortest: readonly Shortest[], spec: DiscSpec): Fault | null {
  const least = leastDrawn(spec)[kind === 'window' ? 'windowMm' : 'landMm'];
  const arcs = alongRadiiMm(shortest.length, spec).map(
    (radius, track) => radius * degToRad(shortest[track]![kind === 'window' ? 'windowDeg' : 'landDeg']),
  );
  const narrowest = Math.min(...arcs);
  if (narrowest >= least - HAIR_MM) return null;
  const failing = arcs.filter((arc) => arc < least - HAIR_MM).length;
  const placed = shortest[arcs.indexOf(narrowest)]!;
  const others = failing > 1 ? `, the narrowest of ${failing} tracks that fail` : '';
  return {
    code: kind === 'window' ? 'disc/window-too-narrow' : 'disc/land-too-narrow',
    what: `A ${kind} is narrower than the process can make, at the inner edge of its track.`,
    where: 'disc.diameterMm',
    got: `${showMm(narrowest)} on track ${arcs.indexOf(narrowest)}${others}`,
    allowed: `${showMm(least)} or more (${spec.process.kind})`,
    at: [
      placeOn(
        spec,
        innerRadiiMm(shortest.length, spec)[arcs.indexOf(narrowest)]!,
        kind === 'window' ? placed.windowAtDeg : placed.landAtDeg,
      ),
    ],
  };
}

/** Middle of each web, a quarter turn from the index mark; none where the tracks have no room. */
function webPlaces(trackCount: number, spec: DiscSpec): FaultPlace[] {
  const band = bandWidthMm(trackCount, spec);
  if (band <= 0) return [];
  const inner = innerRadiiMm(trackCount, spec).sort((a, b) => a - b);
  return inner.slice(1).map((radius) => placeOn(spec, radius - spec.webMm / 2, 90));
}

function ringFault(field: 'webMm' | 'rimMm', trackCount: number, spec: DiscSpec): Fault | null {
  const least = leastDrawn(spec).webMm;
  if (spec[field] === 0 || spec[field] >= least - HAIR_MM) return null;
  const isWeb = field === 'webMm';
  return {
    code: isWeb ? 'disc/web-too-thin' : 'disc/rim-too-thin',
    what: `The ring of material ${isWeb ? 'between two tracks' : 'outside the tracks'} is thinner than the process can make.`,
    where: `disc.${field}`,
    got: showMm(spec[field]),
    allowed: `0 mm for none, or ${showMm(least)} or more (${spec.process.kind})`,
    at: isWeb ? webPlaces(trackCount, spec) : [placeOn(spec, spec.diameterMm / 2 - spec.rimMm / 2, 90)],
  };
}

/**
 * What is too small on the drawing for the process, or does not fit.
 *
 * @param shortest - Shortest marks of each track. [deg]
 * @param spec - The disc as asked for, with usable sizes. [mm]
 * @returns Faults, n ≥ 0.
 */
export function fitFaults(shortest: readonly Shortest[], spec: DiscSpec): Fault[] {
  const band = bandFault(shortest.length, spec);
  // Where the tracks do not fit, their radii mean nothing.
  const arcs = band ? [] : [arcFault('window', shortest, spec), arcFault('land', shortest, spec)];
  return [
    ringFault('webMm', shortest.length, spec),
    ringFault('rimMm', shortest.length, spec),
    band,
    ...arcs,
  ].filter((fault) => fault !== null);
}
