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
  'halfWidth',
  'flags',
  'mean',
  'agreement',
  'pulses',
  'edges',
  'gust',
] as const;
/** Name of a field. */
export type LineField = (typeof lineFields)[number];

/** Stands for a heading that could not be read; never 0, which is north. */
export const NOT_READ = '?';

/** Stands for no flag at all, and for what an instrument does not have or does not work out. */
export const NONE = '-';

/** What a line says about itself, each by one letter, in the order they are sent. */
export const lineFlags = {
  /** Since the line before, the position moved further between two reads than the shaft can turn. */
  impossibleJump: 'j',
  /** A read since the line before showed a word that is not in the code table. */
  illegalBefore: 'p',
  /** The word of this line is not in the code table: there is no heading, and none is guessed. */
  illegalWord: 'w',
  /** A channel stands in the middle of an edge, and the heading is finer than its step. */
  interpolated: 'i',
  /** A channel that should have changed several times has not. */
  stuckChannel: 's',
  /** Since the start every channel has been dark: no light, no supply, or the one word that looks so. */
  allDark: 'd',
  /** Since the start every channel has been lit: no disc, daylight, or the one word that looks so. */
  allLight: 'l',
  /** Without its light a channel already reads almost everything it can: daylight drowns it. */
  daylight: 'a',
  /** The line belongs to a recorded turn: lines follow each other as fast as they can. */
  turnRecording: 'r',
} as const;
/** Name of a flag. */
export type LineFlag = keyof typeof lineFlags;

/** Counters and milliseconds run to here and start again at 0. [-] */
export const COUNTER_MOST = 4_294_967_295;

/** Most pulses in 3 s that a line can carry: 16 bits. [-] */
export const GUST_MOST = 65_535;

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
  /** What the converter read on each channel, channel 0 first; red, green and blue for three colours. [counts], n ≥ 1 */
  readonly counts: readonly number[];
  /** What the channels read after thresholds and hysteresis. */
  readonly word: Word;
  /** Where the wind comes from, in hundredths; `null` when the word is in no code table. [deg], [0, 360) */
  readonly headingDeg: Degrees | null;
  /** Largest error of that heading; `null` exactly when there is no heading. [deg], 0..180 */
  readonly halfWidthDeg: Degrees | null;
  /** In the order of `lineFlags`, each at most once. */
  readonly flags: readonly LineFlag[];
  /** Of all reads since the line before; `null` where lines come often enough to average them later. */
  readonly average: LineAverage | null;
  /** `null` for an instrument without cups. */
  readonly cups: LineCups | null;
}

/** Mean direction worked out by the controller. */
export interface LineAverage {
  /** Direction of the mean of unit vectors; `null` when nothing was read, or all cancels out. [deg], [0, 360) */
  readonly headingDeg: Degrees | null;
  /** Length of that mean, 1 = all alike; `null` when nothing was read. [-], 0..1 in thousandths */
  readonly agreement: number | null;
}

/** Totals of the cups since the controller started. */
export interface LineCups {
  /** Closings of the contact that lasted. [-] */
  readonly pulses: number;
  /** Every edge the interrupt saw, bounces too. [-] */
  readonly edges: number;
  /** Most pulses in any 3 s since the line before; `null` where lines come often enough to tell. [-] */
  readonly gustPulses: number | null;
}

/** Characters at most of the fields whose length does not depend on channels and counts. */
const fixedChars = {
  tag: LINE_TAG.length,
  lineNumber: 10,
  sinceStartMs: 10,
  heading: 5,
  halfWidth: 5,
  flags: Object.keys(lineFlags).length,
  mean: 5,
  agreement: 4,
  pulses: 10,
  edges: 10,
  gust: 5,
  check: 4,
};

/**
 * Length of the longest line, its line feed counted.
 *
 * @param channels - Light sensors. [-], 1..64
 * @param countsAtMost - Largest reading of the converter; 65535 when not given. [counts]
 * @param countsEach - Counts of one channel: three for one that looks in three colours. [-]
 * @returns Every field at its longest, with the space or line feed after it. [characters]
 */
export function lineCharsAtMost(
  channels: number,
  countsAtMost: number = COUNTS_MOST,
  countsEach: 1 | 3 = 1,
): number {
  const counts = countsEach * channels * (String(countsAtMost).length + 1) - 1;
  const fields = [...Object.values(fixedChars), counts, channels];
  return fields.reduce((sum, chars) => sum + chars + 1, 0);
}
