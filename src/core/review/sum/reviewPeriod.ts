import type { Gust } from '../../wind/index.ts';

/** Sums of ten minutes; everything but the rose and the flags is worked out from these. */
export interface ReviewPeriod {
  /** The period is (endMs - 10 min, endMs]. [ms UTC] */
  readonly endMs: number;
  /** Samples received, readable or not. [-] */
  readonly samples: number;
  /** Samples with a speed; with a direction, a calm counting as one; with both. [-] */
  readonly speedReadings: number;
  readonly headingReadings: number;
  readonly bothReadings: number;
  readonly calms: number;
  /** Sum of the unit vectors of the readings that are no calms. [-] */
  readonly north: number;
  readonly east: number;
  /** Sum of the wind vectors, calms as nothing. [m/s] */
  readonly windNorth: number;
  readonly windEast: number;
  /** Sum of the speeds that the wind vectors go with. [m/s] */
  readonly windSpeeds: number;
  /** `null` without any speed. [m/s] */
  readonly meanMPerS: number | null;
  readonly deviationMPerS: number | null;
  /** [m³/s³] */
  readonly meanCube: number | null;
  /** Highest 3 s mean; `null` where samples are too far apart for one. */
  readonly gust: Gust | null;
}
