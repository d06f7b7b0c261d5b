import type { DiscSpec } from '../../src/core/disc/index.ts';

// What a disc must show, worked out apart from src: words by their published formulae, places by plain geometry.

/** Reflected Gray cut at both ends alike, and plain counting. @source F. Gray, US 2632058 (1953) */
export function wordOf(family: string, positions: number, position: number): string {
  const bits = Math.max(1, Math.ceil(Math.log2(positions)));
  const count = position + (family === 'reflected-gray' ? (2 ** bits - positions) / 2 : 0);
  const value = family === 'reflected-gray' ? count ^ (count >> 1) : count;
  return value.toString(2).padStart(bits, '0');
}

/** Middle of a track's band, track 0 the coarsest. [mm] */
export function sensorRadiusMm(spec: DiscSpec, tracks: number, track: number): number {
  const room = (spec.diameterMm - spec.hubDiameterMm) / 2 - spec.rimMm;
  const band = (room - (tracks - 1) * spec.webMm) / tracks;
  const place = spec.finest === 'outside' ? track : tracks - 1 - track;
  return spec.hubDiameterMm / 2 + place * (band + spec.webMm) + band / 2;
}

/** A place on a y-up sheet: clockwise from straight up. [mm] */
export function placeOf(angleDeg: number, radiusMm: number): [x: number, y: number] {
  const turn = (angleDeg * Math.PI) / 180;
  return [Math.sin(turn) * radiusMm, Math.cos(turn) * radiusMm];
}

/** An angle at which a disc reads something else than it should. */
export interface Misreading {
  readonly angleDeg: number;
  readonly read: string;
  readonly wanted: string;
}

/**
 * Turns a disc below its sensors in steps of 0.1 degrees and notes every wrong word; angles within `bandDeg` of a
 * boundary are passed over.
 */
export function misreadings(
  spec: DiscSpec,
  positions: number,
  bandDeg: number,
  isMaterial: (x: number, y: number) => boolean,
): { readonly wrong: Misreading[]; readonly read: number } {
  const tracks = wordOf(spec.code, positions, 0).length;
  const step = 360 / positions;
  const wrong: Misreading[] = [];
  let read = 0;
  for (let tenth = 0; tenth < 3600; tenth++) {
    const angleDeg = tenth / 10;
    const within = angleDeg / step - Math.round(angleDeg / step);
    if (Math.abs(within * step) < bandDeg) continue;
    read++;
    let word = '';
    for (let track = 0; track < tracks; track++) {
      const isLit = !isMaterial(...placeOf(angleDeg, sensorRadiusMm(spec, tracks, track)));
      word += isLit ? spec.windowLevel : 1 - spec.windowLevel;
    }
    const wanted = wordOf(spec.code, positions, Math.floor(angleDeg / step));
    if (word !== wanted) wrong.push({ angleDeg, read: word, wanted });
  }
  return { wrong, read };
}
