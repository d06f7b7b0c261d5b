import type { HeadPlan } from '../head/index.ts';
import type { Instrument } from '../instrument/index.ts';
import { programFacts } from './facts.ts';
import { micropythonText } from './micropython/micropython.ts';
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
 * The controller program of an instrument: a sketch in C++11 or a MicroPython file, by its board, that needs nothing but
 * the board's own core.
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
  if (head.board.language === 'micropython') {
    return { fileName: 'main.py', source: micropythonText(instrument, facts) };
  }
  return { fileName: `${programName(instrument.name)}.ino`, source: sketchText(instrument, facts) };
}

/**
 * Every file of a controller's program, as a maker copies them.
 *
 * @param head - Board, thresholds [counts] and code of the same instrument.
 * @returns A sketch in the folder of its name; or `main.py`, and beside it the same steps from counts to a line as one
 * C++ header that touches no hardware, for makers who write the reading themselves.
 * @throws VanewrightError with every problem of `programProblems`.
 * @check test/journeys/programAgrees.test.ts: host build, emulated chip and MicroPython agree word for word
 */
export function programFiles(instrument: Instrument, head: HeadPlan): ProgramFile[] {
  const { fileName, source } = programFor(instrument, head);
  if (head.board.language === 'sketch') {
    return [{ path: `${fileName.replace(/[.]ino$/, '')}/${fileName}`, content: source }];
  }
  const files = [{ path: fileName, content: source }];
  if (instrument.controller.format === 'senml') return files; // written by MicroPython alone
  return [...files, { path: 'vane_unit.h', content: unitText(instrument, programFacts(instrument, head)) }];
}
