import { materials, thicknessDefaultsMm } from '../../disc/index.ts';
import { ledWavelengthDefaultsNm, lightPartDefaults, sensorPartDefaults } from '../../head/index.ts';

/** Solid that a hub keeps round the bore, both sides together. [mm] */
export const HUB_WALLS_MM = 10;

/** Share of the disc's diameter left to the hub, so that the innermost track is not too tight. [-] */
export const HUB_SHARE = 0.35;

/** Default web as a multiple of the narrowest one the process can make. [-] */
export const WEB_MARGIN = 1.5;

/** Narrowest rim by default: room for an index notch. [mm] */
export const LEAST_RIM_MM = 2;

/** Width of an index notch by default: seen across a table. [mm] */
export const NOTCH_WIDTH_MM = 2;

/** `fdm 2, laser 3` */
function listed(values: Readonly<Record<string, number | string>>): string {
  return Object.entries(values)
    .map(([kind, value]) => `${kind} ${value}`)
    .join(', ');
}

/** Density of each process's usual material. [kg/m3] */
const densities = Object.fromEntries(
  Object.entries(materials).map(([kind, { densityKgPerM3 }]) => [kind, densityKgPerM3]),
);

/** How defaults follow from other fields, in words; `resolveInstrument` does the same in numbers. */
export const defaultRules = {
  positions: 'the smallest even count whose step is at most resolutionDeg; one of the two must be given',
  oneStep: 'one step, 360 / positions',
  hub: `bore.diameterMm + ${HUB_WALLS_MM} mm, or ${HUB_SHARE} of diameterMm if that is more`,
  thickness: `by process.kind: ${listed(thicknessDefaultsMm)} mm`,
  form: 'by process.kind: an overlay on film and in colour print, copper on a board, else through-cut',
  allowance: 'drawn once a coupon was measured, none before',
  density: `by process.kind: ${listed(densities)} kg/m3`,
  web: `${WEB_MARGIN} times process.minWebMm`,
  rim: `twice webMm, or ${LEAST_RIM_MM} mm if that is more`,
  notchWidth: `${NOTCH_WIDTH_MM} mm, or 0 where rimMm has no room for a notch of depthMm`,
  notchDepth: 'half of rimMm',
  ledWavelength: `by detector.kind: ${listed(ledWavelengthDefaultsNm)} nm`,
  sensorPart: `by detector.kind: ${listed(sensorPartDefaults)}`,
  lightPart: `by light.kind: ${listed(lightPartDefaults)}`,
  cupsPin: "the board's first interrupt pin",
} as const;
