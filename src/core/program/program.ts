import type { HeadPlan } from '../head/index.ts';
import type { Instrument } from '../instrument/index.ts';
import { programFacts } from './facts.ts';
import { programName } from './programName.ts';
import { sketchText } from './sketch/sketch.ts';
import { unitText } from './unit/unit.ts';

/** A program as a maker loads it into the controller. */
export interface Program {
  /** Name of its main file; the tools for sketches want a folder of the same name around it. */
  readonly fileName: string;
  readonly source: string;
}

/** One file of a program. */
export interface ProgramFile {
  /** Path below the program's own folder, `/` between names. */
  readonly path: string;
  readonly content: string;
}

/**
 * The controller program of an instrument: a sketch in C++11 that needs nothing but the board's own core.
 *
 * It reads all channels, applies thresholds with hysteresis, looks the word up, counts cup pulses by interrupt, keeps
 * settings, obeys commands, and sends the lines of docs/line-format.md.
 *
 * @param instrument - Its name and place come into comments only, with every sign that could end one taken out.
 * @param head - Board, thresholds [counts] and code of the same instrument.
 * @throws VanewrightError with every problem of `programProblems`.
 * @check test/journeys/programReads.test.ts
 */
export function programFor(instrument: Instrument, head: HeadPlan): Program {
  const facts = programFacts(instrument, head);
  return { fileName: `${programName(instrument.name)}.ino`, source: sketchText(instrument, facts) };
}

/**
 * From counts to a line as one C++ header that touches no hardware, for boards whose reading the maker writes.
 *
 * @param head - Thresholds [counts] and code of the same instrument.
 * @throws VanewrightError with every problem of `programProblems`.
 * @check test/journeys/programAgrees.test.ts: compiled on the host, it agrees with the emulated chip
 */
export function programUnit(instrument: Instrument, head: HeadPlan): string {
  return unitText(instrument, programFacts(instrument, head));
}
