import type { Word } from '../codes/index.ts';
import type { Degrees } from '../units/index.ts';

/** First field of every line: our sign and the version of the format. */
export const LINE_TAG = 'vw1';

/** Fields of a line in the order they are sent, between the tag and the check value. */
export const lineFields = [
  'lineNumber',
  'sinceStartMs',
  'counts',
  'word',
  'heading',
  'flags',
  'pulses',
  'edges',
] as const;
/** Name of a field. */
export type LineField = (typeof lineFields)[number];

/** Stands for a heading that could not be read; never 0, which is north. */
export const NOT_READ = '?';

/** Stands for no flag at all, and for the cups of an instrument that has none. */
export const NONE = '-';

/** What a line says about itself, each by one letter, in the order they are sent. */
export const lineFlags = {
  /** Since the line before, the position moved further between two reads than the shaft can turn. */
  impossibleJump: 'j',
  /** A read since the line before showed a word that is not in the code table. */
  illegalBefore: 'p',
  /** The word of this line is not in the code table: there is no heading, and none is guessed. */
  illegalWord: 'w',
} as const;
/** Name of a flag. */
export type LineFlag = keyof typeof lineFlags;

/** Counters and milliseconds run to here and start again at 0. [-] */
export const COUNTER_MOST = 4_294_967_295;

/** Largest reading of a converter that a line can carry: 16 bits. [counts] */
export const COUNTS_MOST = 65_535;

/** Most channels a line can carry; no head a maker can build comes near. [-] */
export const LINE_CHANNELS_MOST = 64;

/** One line as the controller sends it. */
export interface Line {
  /** Lines sent before this one since the controller started; starts again at 0 after 2^32. [-] */
  readonly lineNumber: number;
  /** Time since the controller started; starts again at 0 after 2^32. [ms] */
  readonly sinceStartMs: number;
  /** What the converter read on each channel, channel 0 first. [counts], n ≥ 1 */
  readonly counts: readonly number[];
  /** What the channels read after thresholds and hysteresis. */
  readonly word: Word;
  /** Where the wind comes from, in hundredths; `null` when the word is in no code table. [deg], [0, 360) */
  readonly headingDeg: Degrees | null;
  /** In the order of `lineFlags`, each at most once. */
  readonly flags: readonly LineFlag[];
  /** Totals since the controller started; `null` for an instrument without cups. */
  readonly cups: {
    /** Closings of the contact that lasted. [-] */
    readonly pulses: number;
    /** Every edge the interrupt saw, bounces too. [-] */
    readonly edges: number;
  } | null;
}

/**
 * Length of the longest line, its line feed counted.
 *
 * @param channels - Light sensors. [-], 1..64
 * @param countsAtMost - Largest reading of the converter; 65535 when not given. [counts]
 * @returns Tag 3, two counters 10, counts, word, heading 5, flags, two counters 10, check value 4, the spaces and the line feed. [characters]
 */
export function lineCharsAtMost(channels: number, countsAtMost: number = COUNTS_MOST): number {
  const counter = String(COUNTER_MOST).length;
  const counts = channels * (String(countsAtMost).length + 1) - 1;
  const flags = Object.keys(lineFlags).length;
  const fields = [LINE_TAG.length, counter, counter, counts, channels, 5, flags, counter, counter, 4];
  return fields.reduce((sum, chars) => sum + chars + 1, 0);
}
