import { throwIfAny } from '../error/index.ts';
import { gateOf, hasGates, readsEach, settleUs, type HeadPlan } from '../head/index.ts';
import type { ControllerSpec, Instrument } from '../instrument/index.ts';
import { statusCharsAtMost } from '../record/index.ts';
import { channelFacts, type ChannelFacts } from './channelFacts.ts';
import { countsMost, lineChars, programProblems } from './programProblems.ts';
import { countsEach, markFacts, thresholdPairs, type MarkFacts } from './markFacts.ts';
import { levelCountOf, readingsOf, type Readings } from './readings.ts';
import { wiringPlan, type WiringPlan } from './wiring/wiring.ts';

/** Cups as the program counts them. */
export interface CupFacts {
  readonly pin: string;
  readonly quietUs: number;
  /** Wind that passes for one pulse; `null` for cups not yet calibrated. [mm] */
  readonly runPerPulseMm: number | null;
  /** Wind speed of the fitted line at no pulses. [cm/s] */
  readonly startCmPerS: number;
}

/** Every number that goes into the program, worked out once. */
export interface ProgramFacts extends Readings {
  readonly wiring: WiringPlan;
  readonly positions: number;
  /** n = channels */
  readonly channels: readonly ChannelFacts[];
  /** Levels of the code: bits of a channel in a word are one for two, two for three. [-] */
  readonly levelCount: 2 | 3;
  /** How three marks are told apart; `null` for windows and lands. */
  readonly marks: MarkFacts | null;
  /** Counts of one channel: three where its mark is looked at in three colours. [-] */
  readonly countsEach: 1 | 3;
  /** Level of the code that lets light through. */
  readonly windowLevel: 0 | 1;
  /** Whether counts rise or fall when a pulsed light comes on: sensors to ground and inverters turn them round. */
  readonly lightRaises: boolean;
  /** Largest reading of the converter, or of a pin. [counts] */
  readonly countsMost: number;
  /** How one wire is read: counts from which on each next word is meant, and the words in order. `null` without one. */
  readonly ladder: { readonly fromCounts: readonly number[]; readonly words: readonly number[] } | null;
  /** Each channel is converted twice and the first result thrown away. */
  readonly readTwice: boolean;
  /** Wait after the lights have changed; `null` when they are steady. [us] */
  readonly settleUs: number | null;
  /** Added to every heading of the table until the maker sets another. [0.01 deg] */
  readonly northHundredths: number;
  /** Fastest turn of the shaft. [0.01 deg/s] */
  readonly turnHundredthsPerS: number;
  /** After this long without a read the shaft can stand anywhere. [ms] */
  readonly halfTurnMs: number;
  readonly cups: CupFacts | null;
  readonly baud: number;
  readonly lineIntervalMs: number;
  readonly format: ControllerSpec['format'];
  /** Lines come so seldom that the controller averages and finds the gust itself. */
  readonly averages: boolean;
  readonly sleep: Instrument['power']['sleep'];
  /** Longest line of any kind, line end counted. [characters] */
  readonly lineChars: number;
}

/** Above this, elapsed milliseconds times 1000 would pass 32 bits in the program; 66 minutes. [ms] */
const ELAPSED_MOST_MS = 4_000_000;

/** Fastest turn that 32 bits of the program can follow over one pause; 1000 turns a second. [0.01 deg/s] */
const TURN_MOST = 36_000_000;

/**
 * Lines further apart than this are averaged by the controller.
 *
 * @source WMO-No. 8: gusts are 3 s means, sampled at least once a second; a reader of closer lines has all it needs. [ms]
 */
const AVERAGE_ABOVE_MS = 1000;

function cupFacts({ cups }: Instrument): CupFacts | null {
  if (!cups) return null;
  const { pin, quietUs, runPerPulseM, startSpeedMPerS } = cups;
  return {
    pin,
    quietUs,
    runPerPulseMm: runPerPulseM === null ? null : Math.max(1, Math.round(runPerPulseM * 1000)),
    startCmPerS: Math.round(startSpeedMPerS * 100),
  };
}

/** Words of one wire in the order of their counts, and where each next one begins: halfway between the printed levels. */
function ladderFacts({ ladder }: HeadPlan): ProgramFacts['ladder'] {
  if (ladder === null) return null;
  const { order, levels } = ladder;
  const at = (i: number): number => levels[order[i]!]!;
  const fromCounts = order.slice(1).map((_, i) => Math.ceil((at(i) + at(i + 1)) / 2));
  return { fromCounts, words: order };
}

/** The numbers of a program. @throws VanewrightError with every problem of `programProblems`. */
export function programFacts(instrument: Instrument, head: HeadPlan): ProgramFacts {
  throwIfAny(programProblems(instrument, head));
  const { levels, circuit, disc, board, spec } = head;
  const { code } = disc;
  const { turnRateDegPerS } = instrument.need;
  const { baud, lineIntervalMs, format } = instrument.controller;
  const readings = readingsOf(instrument, code);
  const pairs = thresholdPairs(head) * code.channels.length;
  const status = statusCharsAtMost(pairs, countsMost(head));
  return {
    ...readings,
    wiring: wiringPlan(instrument, head),
    positions: readings.headingHundredths.length,
    channels: channelFacts(instrument, head),
    levelCount: levelCountOf(code),
    marks: markFacts(head),
    countsEach: countsEach(head),
    windowLevel: disc.spec.windowLevel,
    lightRaises: (circuit.sensorTo === 'supply') !== (hasGates(circuit) && gateOf(circuit) === 'schmitt'),
    countsMost: countsMost(head),
    ladder: ladderFacts(head),
    readTwice: readsEach({ circuit, sourceOhm: levels.sourceOhm, board }) === 2,
    settleUs: circuit.emitters === 'pulsed' ? settleUs(spec.detector) : null,
    northHundredths: Math.round(instrument.site.northOffsetDeg * 100) % 36_000,
    turnHundredthsPerS: clamp(Math.round(turnRateDegPerS * 100), 1, TURN_MOST),
    halfTurnMs: clamp(Math.ceil(180e3 / turnRateDegPerS), 1, ELAPSED_MOST_MS),
    cups: cupFacts(instrument),
    baud,
    lineIntervalMs,
    format,
    averages: lineIntervalMs > AVERAGE_ABOVE_MS,
    sleep: instrument.power.sleep,
    lineChars: Math.max(lineChars(instrument, head), status),
  };
}

function clamp(value: number, least: number, most: number): number {
  return Math.min(Math.max(value, least), most);
}
