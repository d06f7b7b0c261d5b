import { boardNamed } from '../../src/core/boards/index.ts';
import type { DiscPlan } from '../../src/core/disc/index.ts';
import { planHead, type CircuitSpec, type HeadPlan, type HeadSpec } from '../../src/core/head/index.ts';

/** A linear detector behind a slit, placed without error. */
export const LINEAR_HEAD: HeadSpec = {
  detector: {
    kind: 'phototransistor',
    litMa: 0.5,
    darkMa: 0,
    saturationV: 0.4,
    riseMs: 0.015,
    fallMs: 0.015,
    spread: 0,
  },
  light: { kind: 'led', currentMa: 20, wavelengthNm: 950 },
  aperture: { shape: 'slit', widthMm: 1, lengthMm: 3 },
  tangentialSdMm: 0,
  radialSdMm: 0,
  patternedFace: 'up',
};

/** A photoresistor of the worked example: 2 kohm lit, 200 kohm dark. */
export const LOG_HEAD: HeadSpec = {
  ...LINEAR_HEAD,
  detector: {
    kind: 'photoresistor',
    litOhm: 2_000,
    darkOhm: 200_000,
    gamma: 0.7,
    riseMs: 20,
    fallMs: 30,
    spread: 0,
  },
  light: { kind: 'led', currentMa: 20, wavelengthNm: 525 },
};

/** A divider without noise or tolerance, its thresholds as close together as can be. */
export const QUIET_CIRCUIT: CircuitSpec = {
  input: 'direct',
  emitters: 'steady',
  resistorOhm: null,
  resistorTolerancePercent: 0,
  sensorTo: 'supply',
  thresholds: 'per-channel',
  hysteresisCounts: 0,
  noiseCounts: 0,
};

/** A 28-character line at 9600 baud, slowly turned. */
export const SLOW_RATE = { baud: 9_600, lineChars: 28, turnRateDegPerS: 30 };

/** The board of the tests. */
export const BOARD = boardNamed('atmega328p')!;

/** Head over a disc, by default linear and quiet. */
export function handHead(
  disc: DiscPlan,
  want: { readonly spec?: Partial<HeadSpec>; readonly circuit?: Partial<CircuitSpec> } = {},
): HeadPlan {
  return planHead(
    disc,
    { ...LINEAR_HEAD, ...want.spec },
    { ...QUIET_CIRCUIT, ...want.circuit },
    BOARD,
    SLOW_RATE,
  );
}
