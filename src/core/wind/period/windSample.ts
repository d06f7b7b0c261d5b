import type { Degrees } from '../../units/index.ts';
import { badReading } from '../refusal.ts';

/** One sample as the wind arithmetic takes it: what a record keeps, less its raw counts. */
export interface WindSample {
  /** Instant of the sample. [ms UTC] */
  readonly atMs: number;
  /** Where the wind comes from, in [0, 360); `null` = could not be read, never 0. [deg] */
  readonly headingDeg: Degrees | null;
  /** `null` = could not be read, or no cups; never 0. [m/s] */
  readonly speedMPerS: number | null;
}

/**
 * Refuses a sample that is no sample, before anything is added up: a filler such as 999 would wrap to 279°.
 *
 * @param where - Who asks, for the message.
 * @param atMs - [ms UTC], finite
 * @param headingDeg - `null` = could not be read. [deg], 0 ≤ d < 360
 * @param speedMPerS - `null` = could not be read. [m/s], ≥ 0
 * @throws `wind/bad-reading` at the first that is out of range.
 */
export function requireSample(
  where: string,
  atMs: number,
  headingDeg: Degrees | null,
  speedMPerS: number | null,
): void {
  if (!Number.isFinite(atMs)) throw badReading(`${where}(atMs)`, atMs, 'a finite time in ms');
  if (headingDeg !== null && !(headingDeg >= 0 && headingDeg < 360)) {
    throw badReading(`${where}(headingDeg)`, headingDeg, '0° or more and below 360°, or null');
  }
  if (speedMPerS !== null && !(speedMPerS >= 0 && speedMPerS < Infinity)) {
    throw badReading(`${where}(speedMPerS)`, speedMPerS, 'a finite number, 0 m/s or more, or null');
  }
}
