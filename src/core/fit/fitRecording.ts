import type { DiscPlan } from '../disc/index.ts';
import { throwIfAny, type Problem } from '../error/index.ts';
import type { HeadPlan } from '../head/index.ts';
import type { AsBuilt, Instrument } from '../instrument/index.ts';
import { markFacts } from './angles/marks.ts';
import type { Cause } from './causes/cause.ts';
import { discCauses } from './causes/discCauses.ts';
import { levelCauses } from './causes/levelCauses.ts';
import { speedCause } from './causes/speedCause.ts';
import { isWholeTurn, unknownsOf } from './causes/unknowns.ts';
import { wiringCauses } from './causes/wiringCauses.ts';
import { asBuiltChanges } from './certificate/compare.ts';
import { columnPins, drawnPins } from './columnPins.ts';
import type { Fit, FittedChannel } from './fit.ts';
import { bitCount } from './wiring/guesses.ts';
import type { Recording } from './reading/recording.ts';
import { asBuiltOf } from './table/asBuiltOf.ts';
import { fittedDisc, isComplete, type DiscResult } from './table/fittedDisc.ts';
import type { Reader } from './table/misreads.ts';
import { verdictOf } from './verdict.ts';
import { otherCode } from './wiring/otherCodes.ts';
import { confidenceOf, explainedShare, type RankedWiring } from './wiring/rankWirings.ts';
import { understood, type Understood } from './wiring/understood.ts';
import { alternativeText, wiringOf } from './wiring/wiringText.ts';

/** What else a fit needs to know. */
export interface FitOptions {
  /** When the turn was recorded; ISO 8601, UTC. Written into the table. */
  readonly recordedAt: string;
  /** Disc angle under the reference line at the first row, such as 0 for the index mark; settles codes that look alike when turned. [deg] */
  readonly startsAtDeg?: number | null;
}

/** A wiring that explains less than this of the recording is not believed. [-]; own choice */
const LEAST_EXPLAINED = 0.7;

function refuse(disc: DiscPlan, recording: Recording): void {
  const problems: Problem[] = [];
  const { code } = disc;
  if (code.tracks.some(({ levelCount }) => levelCount > 2)) {
    problems.push({
      code: 'fit/three-levels',
      what: 'A recorded turn of a disc of three colours cannot be taken apart yet.',
      where: 'disc.code',
      got: code.family,
      allowed: 'a code of windows and lands',
      fix: 'Set disc.code to reflected-gray.',
    });
  }
  if (recording.columns.length > 31) {
    problems.push({
      code: 'fit/too-many-columns',
      what: 'The recording has more columns than a head has channels.',
      where: recording.stretches[0]!.file,
      got: `${recording.columns.length} columns`,
      allowed: `${code.channels.length} columns, one a channel`,
      fix: 'Record only the time and the channels.',
    });
  }
  throwIfAny(problems);
}

/**
 * What is wrong with a finished build, and how to read its disc as it was made, from one turn by hand.
 *
 * Nothing is guessed in silence: what the recording leaves open stands in `unknowns` with what to record next, and
 * `asBuilt` is `null` unless every channel was followed round a whole turn.
 *
 * @param instrument - The instrument file, read.
 * @param disc - The disc as drawn.
 * @param head - The head over it.
 * @param recording - As `readRecording` gives it. [counts], [ms]
 * @throws `fit/three-levels`, `fit/too-many-columns`, `fit/nothing-changes`
 * @check src/core/fit/fitRecording.test.ts, test/journeys/fitTwin.test.ts
 */
export function fitRecording(
  instrument: Instrument,
  disc: DiscPlan,
  head: HeadPlan,
  recording: Recording,
  options: FitOptions,
): Fit {
  refuse(disc, recording);
  const drawn = drawnPins(instrument, head);
  const pins = columnPins(recording, instrument, head);
  const isDecoded = recording.content === 'numbers';
  const drawnColumns = isDecoded
    ? drawn.map((_, c) => c)
    : drawn.map((pin, c) => (pins.includes(pin) ? pins.indexOf(pin) : c));
  const all = understood(recording, instrument, head, drawnColumns, options.startsAtDeg ?? null);
  if (all.live === 0) throwIfAny([nothingChanges(all)]);
  const believed = all.ranked.filter(({ followed }) => explainedShare(followed) >= LEAST_EXPLAINED);
  const first = believed[0] ?? null;
  const other = first ? null : otherCodeOf(all);
  const result =
    first && first.wiring.channels.every((wire) => wire)
      ? discOf(instrument, head, all, first, drawnColumns)
      : null;
  const channels = channelsOf(instrument, head, all, first, result, isDecoded ? drawn : pins);
  const wiring =
    first &&
    wiringOf(
      first,
      confidenceOf(believed),
      believed.slice(1).map((one) => alternativeText(one, pins)),
    );
  const base = {
    recordedAt: options.recordedAt,
    recording: all.recording,
    numbersWere: all.numbersWere,
    columns: all.columns,
    wiring,
    channels,
    otherCode: other,
    disc: result?.disc ?? null,
  };
  const asBuilt = asBuiltFor(base, first, options.recordedAt);
  const changes = instrument.asBuilt && asBuilt ? asBuiltChanges(instrument.asBuilt, asBuilt) : null;
  const causes = ranked([
    ...levelCauses(all.columns, channels),
    ...wiringCauses(base, drawn),
    ...(result ? discCauses(result.disc, channels, head) : []),
    ...(result ? speedCause(result.angles, head) : []),
  ]);
  const known = { ...base, causes, changes, asBuilt };
  const unknowns = unknownsOf(known, head);
  return { ...known, unknowns, ...verdictOf({ ...known, unknowns }, instrument) };
}

function ranked(causes: readonly Cause[]): Cause[] {
  return [...causes].sort((a, b) => b.costDeg - a.costDeg);
}

function nothingChanges({ recording, columns }: Understood): Problem {
  const widest = Math.max(...columns.map(({ noiseCounts }) => noiseCounts));
  return {
    code: 'fit/nothing-changes',
    what: 'No column of the recording changes between two levels.',
    where: recording.stretches[0]!.file,
    got: `${columns.length} columns that stay within their noise of ${widest.toFixed(1)} counts`,
    allowed: 'at least one channel that sees windows and lands pass',
    fix: 'Check that the lamps are on and the disc turns with the vane, then turn it slowly through two whole turns.',
  };
}

function otherCodeOf(all: Understood): Fit['otherCode'] {
  const words = new Set(all.inputs.flatMap(({ first, changes }) => wordsSeen(first, changes)));
  const { positions } = all.walk.code;
  const channels = bitCount(all.live);
  const counts = [positions, words.size, words.size - 1, words.size + 1, 2 ** channels].filter(
    (n) => n >= 2 && n <= 4096,
  );
  const found = otherCode(counts, all.live, all.columns.length, (single) => all.moves(single), all.inputs);
  return found && { code: found.code, explainedShare: found.share };
}

function wordsSeen(first: readonly number[], changes: Understood['inputs'][number]['changes']): number[] {
  let bits = first.reduce((sum, bit, c) => (bit ? (sum | (1 << c)) >>> 0 : sum), 0);
  return [
    bits,
    ...changes.map(
      ({ column, value }) => (bits = (value ? bits | (1 << column) : bits & ~(1 << column)) >>> 0),
    ),
  ];
}

/** Whether a channel gives more counts in light: windows are the level `windowLevel` of the code. */
const isLitHigh = (inverted: boolean, instrument: Instrument): boolean =>
  inverted === (instrument.disc.windowLevel === 0);

function discOf(
  instrument: Instrument,
  head: HeadPlan,
  all: Understood,
  first: RankedWiring,
  drawnColumns: readonly number[],
): DiscResult | null {
  const isCounts = all.recording.content === 'counts';
  const drawnInverted =
    isCounts && (instrument.circuit.sensorTo === 'supply') !== (instrument.disc.windowLevel === 1);
  const { lowCounts, highCounts } = isCounts ? head.levels : { lowCounts: 0, highCounts: 1 };
  const drawn: Reader['channels'] = drawnColumns.map((column) => ({
    column,
    lowCounts,
    highCounts,
    digitWhenHigh: drawnInverted ? '0' : '1',
  }));
  return fittedDisc({
    head,
    understood: all,
    ranked: first,
    marks: markFacts(all.walk, head, first.followed, all.recording.stretches).facts,
    drawn,
    litIsHigh: first.wiring.channels.map((wire) => isLitHigh(wire?.inverted ?? false, instrument)),
  });
}

function channelsOf(
  instrument: Instrument,
  head: HeadPlan,
  all: Understood,
  first: RankedWiring | null,
  result: DiscResult | null,
  pins: readonly string[],
): FittedChannel[] {
  return head.channels.map((_, channel): FittedChannel => {
    const wire = first?.wiring.channels[channel] ?? null;
    return {
      channel,
      column: wire?.column ?? null,
      pin: wire ? pins[wire.column]! : null,
      moved: first?.moved.includes(channel) ?? false,
      inverted: first?.inverted.includes(channel) ?? false,
      undecided: first?.wiring.undecided.includes(channel) ?? false,
      litIsHigh: isLitHigh(wire?.inverted ?? false, instrument),
      levels: wire ? all.columns[wire.column]! : null,
      alongMm: result?.angles.alongMm[channel] ?? null,
      growthMm: result?.angles.growthMm[channel] ?? null,
      edgeWidthDeg: result?.edgeWidthsDeg[channel] ?? null,
    };
  });
}

/** The table to be written, or `null` where something that it needs is not known. */
function asBuiltFor(
  fit: Pick<Fit, 'channels' | 'disc' | 'recording'>,
  first: RankedWiring | null,
  recordedAt: string,
): AsBuilt | null {
  const { channels, disc, recording } = fit;
  // Thresholds come from counts; bits and numbers tell none.
  if (!disc || !first || recording.content !== 'counts' || !isComplete(channels) || !isWholeTurn(fit))
    return null;
  const table = asBuiltOf(channels, disc, first.reversed ? 'reversed' : 'same', recordedAt);
  return table.positions.length >= 2 ? table : null;
}
