import type { ReviewPeriod } from '../../src/core/review/index.ts';

export const TEN_MS = 600_000;
/** Readings of a whole period at 1 Hz. [-] */
export const READINGS = 600;

/** Ten minutes at 1 Hz of one wind, whole unless told otherwise. [deg], [m/s] */
export function steadyPeriod(
  endMs: number,
  wind: { readonly headingDeg?: number; readonly speedMPerS?: number; readonly readings?: number },
  more: Partial<ReviewPeriod> = {},
): ReviewPeriod {
  const { headingDeg = 0, speedMPerS = 5, readings = READINGS } = wind;
  const turn = (headingDeg * Math.PI) / 180;
  const [north, east] = [readings * Math.cos(turn), readings * Math.sin(turn)];
  return {
    endMs,
    samples: readings,
    speedReadings: readings,
    headingReadings: readings,
    bothReadings: readings,
    calms: 0,
    north,
    east,
    windNorth: speedMPerS * north,
    windEast: speedMPerS * east,
    windSpeeds: speedMPerS * readings,
    meanMPerS: speedMPerS,
    deviationMPerS: 0.1 * speedMPerS,
    meanCube: speedMPerS ** 3,
    gust: { speedMPerS: 1.5 * speedMPerS, atMs: endMs - 1000 },
    ...more,
  };
}

/** Ten minutes at 1 Hz in which nothing moved. */
export function calmPeriod(endMs: number): ReviewPeriod {
  const nothing = {
    north: 0,
    east: 0,
    windNorth: 0,
    windEast: 0,
    windSpeeds: 0,
    deviationMPerS: 0,
    meanCube: 0,
  };
  return steadyPeriod(endMs, { speedMPerS: 0 }, { calms: READINGS, ...nothing });
}
