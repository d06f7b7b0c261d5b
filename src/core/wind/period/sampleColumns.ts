import { badReading, timeNotRising, unequalLengths } from '../refusal.ts';

/** Bits of `SampleColumns.read`: what could be read of a sample. [-] */
export const READ_HEADING = 1;
export const READ_SPEED = 2;

/**
 * Many samples side by side, as a store hands them out: the fast way through a year.
 *
 * What could not be read is told by `read` alone; the number in its place does not matter and is never used.
 */
export interface SampleColumns {
  /** Instants, rising. [ms UTC] */
  readonly atMs: Float64Array;
  /** Where the wind comes from, in [0, 360). [deg] */
  readonly headingDeg: Float64Array;
  /** [m/s], ≥ 0 */
  readonly speedMPerS: Float64Array;
  /** READ_HEADING and READ_SPEED, added up. [-] */
  readonly read: Uint8Array;
}

/**
 * Refuses columns with a sample that is none, before anything is added up.
 *
 * @param where - Who asks, for the message.
 * @param columns - [ms UTC], [deg], [m/s]
 * @param afterMs - Instant that the first sample must follow. [ms UTC]
 * @throws `wind/unequal-lengths`, `wind/time-not-rising`, `wind/bad-reading`.
 */
export function requireColumns(where: string, columns: SampleColumns, afterMs: number): void {
  const { atMs, headingDeg, speedMPerS, read } = columns;
  const count = atMs.length;
  for (const { length } of [headingDeg, speedMPerS, read]) {
    if (length !== count) throw unequalLengths(`${where}(columns)`, count, length);
  }
  let before = afterMs;
  for (let i = 0; i < count; i++) {
    const at = atMs[i]!;
    if (!(at > before && at < Infinity)) throw badTime(where, before, at, i);
    before = at;
    const bits = read[i]!;
    if ((bits & READ_HEADING) !== 0 && !(headingDeg[i]! >= 0 && headingDeg[i]! < 360)) {
      throw badReading(`${where}(columns.headingDeg[${i}])`, headingDeg[i], '0° or more and below 360°');
    }
    if ((bits & READ_SPEED) !== 0 && !(speedMPerS[i]! >= 0 && speedMPerS[i]! < Infinity)) {
      throw badReading(`${where}(columns.speedMPerS[${i}])`, speedMPerS[i], 'a finite number, 0 m/s or more');
    }
  }
}

function badTime(where: string, before: number, at: number, place: number): Error {
  const field = `${where}(columns.atMs[${place}])`;
  return Number.isFinite(at)
    ? timeNotRising(field, before, at)
    : badReading(field, at, 'a finite time in ms');
}
