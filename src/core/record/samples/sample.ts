import type { Degrees } from '../../units/index.ts';
import { lineFlags, type LineFlag } from '../line.ts';

/** One logged reading after repair, with its time. */
export interface Sample {
  readonly station: string;
  /** Instant of the reading, whole milliseconds. [ms UTC] */
  readonly atMs: number;
  /** The true instant lies within this much of it. [ms] */
  readonly withinMs: number;
  /** Where the wind comes from, in [0, 360); `null` = could not be read, or calm; never 0. [deg] */
  readonly headingDeg: Degrees | null;
  /** Largest error of that heading, where the instrument tells it. [deg] */
  readonly halfWidthDeg: Degrees | null;
  /** Mean of the time since the sample before, as the controller worked it out; `null` where it does not. [deg] */
  readonly meanHeadingDeg: Degrees | null;
  /** Length of that mean. [-], 0..1 */
  readonly agreement: number | null;
  /** Mean since the sample before; `null` = could not be read, or no calibrated cups. [m/s] */
  readonly speedMPerS: number | null;
  /** Highest 3 s mean since the sample before, where the controller works it out. [m/s] */
  readonly gustMPerS: number | null;
  /** Bits of `sampleFlags`. [-] */
  readonly flags: number;
  /** What the channels read, or `null` where only decoded headings were logged. */
  readonly word: string | null;
  /**
   * What the converter read on each channel, kept of the first line of every minute of the controller; the raw log has all.
   * [counts], channel 0 first; `null` = none kept
   */
  readonly counts: readonly number[] | null;
  /** Totals since the controller started, or `null`. [-] */
  readonly pulses: number | null;
  readonly edges: number | null;
  /** Where it comes from: sequence number of the source's first raw entry, and line of that source. [-] */
  readonly stream: number;
  readonly line: number;
}

const ofLine = Object.fromEntries(Object.keys(lineFlags).map((flag, bit) => [flag, 1 << bit])) as Record<
  LineFlag,
  number
>;

/** Bit of each flag of a sample: those of the line, then those of the reading. [-] */
export const sampleFlags = {
  ...ofLine,
  /** Faster than the wind can be there. */
  absurdSpeed: 1 << 16,
  /** The time was guessed from the neighbours of a run. */
  timeGuessed: 1 << 17,
  /** Day and month, unit or coding of the heading were guessed. */
  layoutGuessed: 1 << 18,
} as const;
/** Name of a flag. */
export type SampleFlag = keyof typeof sampleFlags;

/** Names of the flags whose bits are set. [bits] */
export function sampleFlagNames(flags: number): SampleFlag[] {
  return (Object.keys(sampleFlags) as SampleFlag[]).filter((flag) => (flags & sampleFlags[flag]) !== 0);
}

/** What is always known of a sample. */
type Known = Pick<Sample, 'station' | 'atMs' | 'withinMs' | 'stream' | 'line'>;

/**
 * A sample of what is known; everything else is `null`, and no flag is set.
 *
 * Field by field on purpose: objects made by spreading are laid out so that making and reading them takes many times
 * longer, and there are millions of them.
 *
 * @param known - Station, instant [ms UTC] and origin, with any of the other fields.
 */
export function sampleWith(known: Known & Partial<Sample>): Sample {
  return {
    station: known.station,
    atMs: known.atMs,
    withinMs: known.withinMs,
    headingDeg: known.headingDeg ?? null,
    halfWidthDeg: known.halfWidthDeg ?? null,
    meanHeadingDeg: known.meanHeadingDeg ?? null,
    agreement: known.agreement ?? null,
    speedMPerS: known.speedMPerS ?? null,
    gustMPerS: known.gustMPerS ?? null,
    flags: known.flags ?? 0,
    word: known.word ?? null,
    counts: known.counts ?? null,
    pulses: known.pulses ?? null,
    edges: known.edges ?? null,
    stream: known.stream,
    line: known.line,
  };
}

/** The same sample at another instant. [ms UTC], [ms] */
export function retimed(sample: Sample, atMs: number, withinMs: number, flags: number): Sample {
  return {
    station: sample.station,
    atMs,
    withinMs,
    headingDeg: sample.headingDeg,
    halfWidthDeg: sample.halfWidthDeg,
    meanHeadingDeg: sample.meanHeadingDeg,
    agreement: sample.agreement,
    speedMPerS: sample.speedMPerS,
    gustMPerS: sample.gustMPerS,
    flags,
    word: sample.word,
    counts: sample.counts,
    pulses: sample.pulses,
    edges: sample.edges,
    stream: sample.stream,
    line: sample.line,
  };
}
