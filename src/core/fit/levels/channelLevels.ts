import { hysteresisCounts, thresholdsBetween, type CircuitSpec } from '../../head/index.ts';
import type { Recording, Stretch } from '../reading/recording.ts';
import { plateausOf, type Plateaus } from './plateaus.ts';
import { medianOf } from './spread.ts';
import { runsOf, type Cut } from './switching.ts';

/** What is to be said of a recorded column. */
export type Verdict = 'good' | 'weak' | 'dead' | 'stuck' | 'saturated' | 'tied';

/** Levels of one recorded column, whichever channel of the code it is. */
export interface ColumnLevels {
  readonly column: number;
  readonly name: string;
  /** The two plateaus; equal where the column never changes. [counts] */
  readonly lowPlateau: number;
  readonly highPlateau: number;
  /** Standard deviation of one sample. [counts] */
  readonly noiseCounts: number;
  /** Highest that low runs come down to, and lowest that high runs climb to: thresholds must lie between. [counts] */
  readonly gapLowCounts: number;
  readonly gapHighCounts: number;
  /** It turns low at or below `lowCounts`, high at or above `highCounts`. [counts], whole */
  readonly lowCounts: number;
  readonly highCounts: number;
  /** From the thresholds to the nearer end of the gap. [counts], [sigma] */
  readonly marginCounts: number;
  readonly marginSigma: number;
  /** How far the plateaus went from the first third of the recording to the last: low, high. [counts] */
  readonly driftCounts: readonly [number, number];
  readonly verdict: Verdict;
  /** Column it moves together with, where it is tied; else `null`. */
  readonly tiedTo: number | null;
}

/** Below this margin a channel will misread now and then. [sigma]; six as for hysteresis, common practice, no source */
const LEAST_MARGIN_SIGMA = 6;
/** Swing below which a channel is called weak, against scale and against the best of its neighbours. [-]; own choice */
const WEAK_SHARE = 0.12;
const WEAK_BESIDE = 0.45;
/** Share of runs that may fall short of the gap: a vane that turns back in the middle of an edge makes such. [-] */
const SHORT_RUNS = 0.08;

/** Runs shorter than this beside the usual are no runs. [-]; own choice */
const SHORT_SHARE = 0.12;

/** What the levels are judged by. */
export interface LevelSettings {
  readonly circuit: CircuitSpec;
  /** Full scale of the converter; 1 for recorded bits. [counts] */
  readonly scaleCounts: number;
}

/** Samples of a column, stretch by stretch. */
const samplesOf = (stretches: readonly Stretch[], column: number): number[][] =>
  stretches.map(({ rows }) => rows.map((row) => row[column]!));

/**
 * Levels, thresholds, margins and a first verdict of every recorded column.
 *
 * Thresholds lie in the middle of the gap that all files leave, so that shade and sun are both read.
 *
 * @check src/core/fit/levels/channelLevels.test.ts
 */
export function columnLevels(recording: Recording, settings: LevelSettings): ColumnLevels[] {
  const levels = recording.columns.map((name, column) =>
    oneColumn(recording.stretches, column, name, settings),
  );
  const widest = levels.reduce((most, level) => Math.max(most, level.highPlateau - level.lowPlateau), 0);
  return levels.map((level) => ({ ...level, verdict: verdictOf(level, widest, settings) }));
}

type Bare = Omit<ColumnLevels, 'verdict'> & { readonly isFlooded: boolean };

function oneColumn(
  stretches: readonly Stretch[],
  column: number,
  name: string,
  settings: LevelSettings,
): Bare {
  const { scaleCounts } = settings;
  const files = [...new Set(stretches.map(({ file }) => file))];
  const byFile = files.map((file) =>
    samplesOf(
      stretches.filter((stretch) => stretch.file === file),
      column,
    ),
  );
  const own = byFile.map((pieces) => plateausOf(pieces, scaleCounts));
  const live = own.flatMap((plateaus, f) =>
    plateaus.low === null ? [] : [{ plateaus, pieces: byFile[f]! }],
  );
  if (live.length === 0) return silent(column, name, own);
  const gaps = live.map(({ plateaus, pieces }) => gapOf(pieces, plateaus, settings));
  const gapLow = Math.max(...gaps.map((gap) => gap.low));
  const gapHigh = Math.min(...gaps.map((gap) => gap.high));
  const sigma = Math.max(...own.map((plateaus) => plateaus.sigma));
  const low = Math.max(...live.map(({ plateaus }) => plateaus.low!));
  const high = Math.min(...live.map(({ plateaus }) => plateaus.high));
  const { lowCounts, highCounts } = wholeThresholds({ gapLow, gapHigh, low, high, sigma }, settings);
  const margin = Math.min(lowCounts - gapLow, gapHigh - highCounts);
  return {
    column,
    name,
    lowPlateau: medianOf(live.map(({ plateaus }) => plateaus.low!)),
    highPlateau: medianOf(live.map(({ plateaus }) => plateaus.high)),
    noiseCounts: sigma,
    gapLowCounts: gapLow,
    gapHighCounts: gapHigh,
    lowCounts,
    highCounts,
    marginCounts: margin,
    marginSigma: margin / sigma,
    driftCounts: driftOf(samplesOf(stretches, column).flat(), (gapLow + gapHigh) / 2),
    tiedTo: null,
    // Changes in one file and not in another, or no threshold serves all: daylight has drowned it there.
    isFlooded: live.length < own.length || gapHigh - gapLow <= 0,
  };
}

function silent(column: number, name: string, own: readonly Plateaus[]): Bare {
  const at = medianOf(own.map(({ high }) => high));
  return {
    column,
    name,
    lowPlateau: at,
    highPlateau: at,
    noiseCounts: Math.max(...own.map(({ sigma }) => sigma)),
    gapLowCounts: at,
    gapHighCounts: at,
    lowCounts: Math.floor(at) - 1,
    highCounts: Math.floor(at) + 1,
    marginCounts: 0,
    marginSigma: 0,
    driftCounts: [0, 0],
    tiedTo: null,
    isFlooded: false,
  };
}

/** What thresholds are set between. [counts] */
interface Gap {
  readonly gapLow: number;
  readonly gapHigh: number;
  readonly low: number;
  readonly high: number;
  readonly sigma: number;
}

/** Share of the gap that thresholds keep from its ends. [-]; own choice */
const CLEAR_SHARE = 0.15;

/**
 * Thresholds as the program compares whole counts, never wider apart than half the gap: in the middle between the two
 * plateaus, where edges stand where they are drawn; in the middle of the gap where short marks do not reach that far.
 */
function wholeThresholds(
  { gapLow, gapHigh, low, high, sigma }: Gap,
  { circuit, scaleCounts }: LevelSettings,
) {
  if (scaleCounts === 1) return { lowCounts: 0, highCounts: 1 };
  const width = gapHigh - gapLow;
  const apart = Math.min(hysteresisCounts({ ...circuit, noiseCounts: sigma }, scaleCounts), width / 2);
  const clear = CLEAR_SHARE * width + apart / 2;
  const middle = (low + high) / 2;
  const isClear = middle - clear >= gapLow && middle + clear <= gapHigh;
  const centre = isClear ? middle : (gapLow + gapHigh) / 2;
  const { lowCounts, highCounts } = thresholdsBetween(centre, centre, apart);
  const whole = Math.round(lowCounts);
  return { lowCounts: whole, highCounts: Math.max(whole + 1, Math.round(highCounts)) };
}

/** Ends of the gap in one file: what nearly all runs reach. */
function gapOf(
  pieces: readonly (readonly number[])[],
  { low, high, sigma }: Plateaus,
  { circuit, scaleCounts }: LevelSettings,
) {
  if (scaleCounts === 1) return { low: 0, high: 1 };
  const swing = high - low!;
  const wide = Math.min(hysteresisCounts({ ...circuit, noiseCounts: sigma }, scaleCounts), swing / 2);
  const cut: Cut = { ...thresholdsBetween(high, low!, wide), swing, sigma };
  // The first and last run of a stretch may be cut short.
  const inner = pieces.flatMap((piece) => runsOf(piece, cut).slice(1, -1));
  const usual = medianOf(inner.map(({ from, to }) => to - from));
  // So are pieces of an edge beside a wild sample.
  const runs = inner.filter(({ from, to }) => to - from > SHORT_SHARE * usual);
  const reached = (value: 0 | 1): number[] =>
    runs
      .filter((run) => run.value === value)
      .map((run) => run.extreme)
      .sort((a, b) => (value === 1 ? a - b : b - a));
  const least = (values: readonly number[], otherwise: number): number =>
    values[Math.min(values.length - 1, Math.max(1, Math.floor(SHORT_RUNS * values.length)))] ?? otherwise;
  // A run's own extreme is lifted by noise; its plateau is what a single read meets.
  return { low: Math.max(low!, least(reached(0), low!)), high: Math.min(high, least(reached(1), high)) };
}

/** Change of the medians below and above the middle, from the first third to the last. [counts] */
function driftOf(values: readonly number[], middle: number): [number, number] {
  const third = Math.floor(values.length / 3);
  const [first, last] = [values.slice(0, third), values.slice(values.length - third)];
  const change = (test: (value: number) => boolean): number => {
    const [a, b] = [first.filter(test), last.filter(test)];
    return a.length < 10 || b.length < 10 ? 0 : medianOf(b) - medianOf(a);
  };
  return [change((value) => value < middle), change((value) => value >= middle)];
}

function verdictOf(level: Bare, widest: number, { circuit, scaleCounts }: LevelSettings): Verdict {
  const swing = level.highPlateau - level.lowPlateau;
  if (level.isFlooded) return 'saturated';
  if (swing === 0) {
    const litIsHigh = circuit.sensorTo === 'supply';
    return level.highPlateau > scaleCounts / 2 === litIsHigh ? 'stuck' : 'dead';
  }
  if (scaleCounts === 1) return 'good';
  const isWeak = swing < WEAK_SHARE * scaleCounts || swing < WEAK_BESIDE * widest;
  return isWeak || level.marginSigma < LEAST_MARGIN_SIGMA ? 'weak' : 'good';
}
