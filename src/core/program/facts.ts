import { throwIfAny, type Problem } from '../error/index.ts';
import type { HeadPlan } from '../head/index.ts';
import { headingOfPosition, type Instrument } from '../instrument/index.ts';
import { lineCharsAtMost } from '../record/index.ts';
import { showNumber } from '../units/index.ts';
import { wiringPlan, wiringProblems, type WiringPlan } from './wiring.ts';
import { wordTableFor, type WordTable } from './wordTable.ts';

/** Every number that goes into the program, worked out once. */
export interface ProgramFacts {
  readonly wiring: WiringPlan;
  readonly positions: number;
  /** A channel turns low at or below `lowCounts`, high at or above `highCounts`. [counts], n = channels */
  readonly lowCounts: readonly number[];
  readonly highCounts: readonly number[];
  /** Level of the code that a channel shows while it reads high counts. */
  readonly levelWhenHigh: 0 | 1;
  /** Whether high counts mean light. */
  readonly lightIsHigh: boolean;
  /** The sensors are too weak to charge the converter's input at once, so each is read twice. */
  readonly readTwice: boolean;
  readonly table: WordTable;
  /** Heading of each position's middle, in hundredths. [0.01 deg], n = positions */
  readonly headingHundredths: readonly number[];
  /** Shortest time in which the shaft can turn one position on. [us] */
  readonly stepUs: number;
  /** After this long without a read the shaft can stand anywhere. [ms] */
  readonly halfTurnMs: number;
  readonly cups: { readonly pin: string; readonly quietUs: number } | null;
  readonly baud: number;
  readonly lineIntervalMs: number;
  /** Longest line, line feed counted. [characters] */
  readonly lineChars: number;
}

/** Time from the start bit to the stop bit of one character. [bit] */
const BITS_A_CHARACTER = 10;

/** Above this, elapsed milliseconds times 1000 would pass 32 bits in the program; 66 minutes. [ms] */
const ELAPSED_MOST_MS = 4_000_000;

/**
 * Thresholds for counts that the converter has rounded down: the real value is at or above `highCounts` when the
 * rounded one is at or above its nearest whole number, and below `lowCounts` when it is below that one.
 */
function wholeThresholds({ lowCounts, highCounts }: HeadPlan['levels']): { low: number; high: number } {
  return { low: Math.round(lowCounts) - 1, high: Math.round(highCounts) };
}

function thresholdProblems({ levels, board }: HeadPlan): Problem[] {
  const most = 2 ** board.converterBits - 1;
  const { low, high } = wholeThresholds(levels);
  if (low >= 0 && low < high && high <= most) return [];
  return [
    {
      code: 'program/thresholds-crossed',
      what: 'The lower threshold lies above the upper one, or one of them is outside what the converter reads.',
      where: 'circuit.hysteresisCounts',
      got: `lower ${showNumber(levels.lowCounts, 1)} and upper ${showNumber(levels.highCounts, 1)} counts`,
      allowed: `from 1 to ${most} counts, the lower one not above the upper one`,
      fix: 'Leave circuit.hysteresisCounts out to take the recommended distance.',
    },
  ];
}

function levelProblems({ disc }: HeadPlan): Problem[] {
  if (disc.code.tracks.every((track) => track.levelCount === 2)) return [];
  return [
    {
      code: 'program/three-levels',
      what: 'The program tells light from dark, and the code has tracks of three colours.',
      where: 'disc.code',
      got: `a track of 3 levels in ${disc.code.family}`,
      allowed: 'tracks of 2 levels',
      fix: 'Set disc.code to reflected-gray.',
    },
  ];
}

/** Shortest line interval that leaves time to send the longest line and to read all channels once. [ms] */
function shortestIntervalMs({ controller }: Instrument, head: HeadPlan): number {
  const sendMs = (charsAtMost(head) * BITS_A_CHARACTER * 1000) / controller.baud;
  const readMs = (head.disc.code.channels.length * readsEach(head) * head.board.conversionUs) / 1000;
  return Math.ceil(Math.max(sendMs, readMs));
}

function intervalProblems(instrument: Instrument, head: HeadPlan): Problem[] {
  const { lineIntervalMs, baud } = instrument.controller;
  const shortest = shortestIntervalMs(instrument, head);
  if (lineIntervalMs >= shortest) return [];
  return [
    {
      code: 'program/line-too-slow',
      what: 'A line takes longer to read and send than the time between two lines.',
      where: 'controller.lineIntervalMs',
      got: `${lineIntervalMs} ms at ${baud} bit/s, for lines of up to ${charsAtMost(head)} characters`,
      allowed: `${shortest} ms or more at ${baud} bit/s`,
      fix: `Set controller.lineIntervalMs to ${shortest}, or raise controller.baud.`,
    },
  ];
}

function charsAtMost({ board, disc }: HeadPlan): number {
  return lineCharsAtMost(disc.code.channels.length, 2 ** board.converterBits - 1);
}

function readsEach({ levels, board }: HeadPlan): 1 | 2 {
  return levels.sourceOhm > board.maxSourceOhm ? 2 : 1;
}

/**
 * Everything that keeps a program from being written; none when it can be.
 *
 * @returns The problems of the wiring, then `program/three-levels`, `program/thresholds-crossed`, `program/line-too-slow`.
 */
export function programProblems(instrument: Instrument, head: HeadPlan): Problem[] {
  return [
    ...wiringProblems(instrument, head),
    ...levelProblems(head),
    ...thresholdProblems(head),
    ...intervalProblems(instrument, head),
  ];
}

/** The numbers of a program. @throws VanewrightError with every problem of `programProblems`. */
export function programFacts(instrument: Instrument, head: HeadPlan): ProgramFacts {
  throwIfAny(programProblems(instrument, head));
  const { levels, circuit, disc } = head;
  const { code } = disc;
  const { turnRateDegPerS } = instrument.need;
  const thresholds = wholeThresholds(levels);
  const lightIsHigh = circuit.sensorTo === 'supply';
  const { windowLevel } = disc.spec;
  return {
    wiring: wiringPlan(instrument, head),
    positions: code.positions,
    lowCounts: code.channels.map(() => thresholds.low),
    highCounts: code.channels.map(() => thresholds.high),
    levelWhenHigh: lightIsHigh ? windowLevel : windowLevel === 1 ? 0 : 1,
    lightIsHigh,
    readTwice: readsEach(head) === 2,
    table: wordTableFor(code),
    headingHundredths: code.words.map(
      (_, position) => Math.round(headingOfPosition(instrument, position) * 100) % 36_000,
    ),
    stepUs: clamp(Math.round(360e6 / code.positions / turnRateDegPerS), 1, ELAPSED_MOST_MS * 1000),
    halfTurnMs: clamp(Math.ceil(180e3 / turnRateDegPerS), 1, ELAPSED_MOST_MS),
    cups: instrument.cups,
    baud: instrument.controller.baud,
    lineIntervalMs: instrument.controller.lineIntervalMs,
    lineChars: charsAtMost(head),
  };
}

function clamp(value: number, least: number, most: number): number {
  return Math.min(Math.max(value, least), most);
}
