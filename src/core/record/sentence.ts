import type { Degrees } from '../units/index.ts';

/** Direction and speed as two open sentences carry them. */
export interface WindSentence {
  /**
   * `mwd`: from true north. `mwv`: from the bow or centre line of what carries the vane, which on a fixed mast is
   * whatever the maker set as zero.
   */
  readonly kind: 'mwd' | 'mwv';
  /** Where the wind comes from, to a tenth; `null` when it was not read. [deg], [0, 360) */
  readonly directionDeg: Degrees | null;
  /** To a tenth; `null` when unknown. [m/s] */
  readonly speedMPerS: number | null;
  /** Of `mwv`: relative to what moves, or as if it stood still; `null` for `mwd`. */
  readonly reference: 'relative' | 'theoretical' | null;
  /** Whether the sender vouches for the values. */
  readonly isValid: boolean;
}

/** Who sends: weather instruments, two letters of the standard. */
const TALKER = 'WI';

/** Knots in a metre a second: 3600/1852, exactly. [kn/(m/s)] */
export const KNOTS_PER_M_PER_S = 3600 / 1852;

/** Largest speed that is written; nothing on earth comes near. [m/s] */
export const SENTENCE_SPEED_MOST = 999.9;

/** Check value of a sentence: all bytes between `$` and `*`, combined by exclusive or. */
export function sentenceCheck(content: string): string {
  let check = 0;
  for (let i = 0; i < content.length; i++) check ^= content.charCodeAt(i) & 0xff;
  return check.toString(16).toUpperCase().padStart(2, '0');
}

/** Tenths as text; a direction that rounds to a full turn is 0.0. */
function tenths(value: number | null, wrap = Infinity): string {
  return value === null ? '' : ((Math.round(value * 10) % (wrap * 10)) / 10).toFixed(1);
}

/**
 * A sentence without its line end; what is not known is left blank, never 0.
 *
 * @param sentence - Direction is rounded to tenths [deg], speed to tenths. [m/s]
 * @returns `$WIMWD` with the magnetic direction left blank, or `$WIMWV` in metres a second.
 * @throws RangeError for a direction outside [0, 360] or a speed outside 0 to 999.9 m/s.
 * @source NMEA 0183 sentences MWD and MWV, as described in public references; check value: exclusive or of all bytes
 * between `$` and `*`.
 * @check src/core/record/sentence.test.ts
 */
export function formatSentence(sentence: WindSentence): string {
  const { kind, directionDeg, speedMPerS, reference, isValid } = sentence;
  const isSound =
    (directionDeg === null || (directionDeg >= 0 && directionDeg <= 360)) &&
    (speedMPerS === null || (speedMPerS >= 0 && speedMPerS <= SENTENCE_SPEED_MOST));
  if (!isSound) throw new RangeError(`No sentence can say ${directionDeg} deg and ${speedMPerS} m/s.`);
  const direction = tenths(directionDeg, 360);
  const speed = tenths(speedMPerS);
  const knots = tenths(speedMPerS === null ? null : speedMPerS * KNOTS_PER_M_PER_S);
  const content =
    kind === 'mwd'
      ? `${TALKER}MWD,${direction},T,,M,${knots},N,${speed},M`
      : `${TALKER}MWV,${direction},${reference === 'theoretical' ? 'T' : 'R'},${speed},M,${isValid ? 'A' : 'V'}`;
  return `$${content}*${sentenceCheck(content)}`;
}
