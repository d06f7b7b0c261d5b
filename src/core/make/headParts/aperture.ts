import type { Problem } from '../../error/index.ts';
import type { Aperture } from '../../head/index.ts';
import { showMm } from '../../units/index.ts';
import { circleOutline, rectangleOutline, type Outline } from '../solids/outline.ts';
import { holeIn, type PrintSetting } from '../solids/print.ts';

/** Opening for a bare beam, in radii at which it has fallen to 1/e²: lets 99.97 % through. [-] @source 1 - exp(-2 · 2²). */
const BEAM_RADII = 4;

/** Size of the opening along and across the track, as it shall come out. [mm] */
export function apertureSizeMm(aperture: Aperture): readonly [alongMm: number, acrossMm: number] {
  switch (aperture.shape) {
    case 'slit':
      return [aperture.widthMm, aperture.lengthMm];
    case 'round':
      return [aperture.diameterMm, aperture.diameterMm];
    case 'gaussian':
      return [BEAM_RADII * aperture.radiusMm, BEAM_RADII * aperture.radiusMm];
  }
}

/** The opening round the origin as it is drawn: x along the track, y outwards. [mm] @param growMm - Wider by this. [mm] */
export function apertureOutline(aperture: Aperture, print: PrintSetting, growMm = 0): Outline {
  const [along, across] = apertureSizeMm(aperture).map((size) => holeIn(print, size + growMm)) as [
    number,
    number,
  ];
  return aperture.shape === 'slit' ? rectangleOutline([along, across]) : circleOutline(along / 2);
}

const fields = {
  slit: 'head.aperture.widthMm',
  round: 'head.aperture.diameterMm',
  gaussian: 'head.aperture.radiusMm',
};

/** An opening finer than the printer can leave open. @returns One `make/aperture-too-fine` at most. */
export function apertureProblems(aperture: Aperture, { process }: PrintSetting): Problem[] {
  const least = Math.min(...apertureSizeMm(aperture));
  if (least >= process.minWindowMm) return [];
  const needed = aperture.shape === 'gaussian' ? process.minWindowMm / BEAM_RADII : process.minWindowMm;
  return [
    {
      code: 'make/aperture-too-fine',
      what: 'The opening before each sensor is finer than the printer can leave open.',
      where: fields[aperture.shape],
      got: `an opening of ${showMm(least)}`,
      allowed: `${showMm(process.minWindowMm)} or more, the narrowest opening of this printer`,
      fix: `Set ${fields[aperture.shape]} to ${needed}, or print the holder without it and glue a cut or printed mask over it.`,
    },
  ];
}
