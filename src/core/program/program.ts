import type { HeadPlan } from '../head/index.ts';
import type { Instrument } from '../instrument/index.ts';
import { programFacts } from './facts.ts';
import { programName } from './programName.ts';
import { circuitText } from './sketch/circuit.ts';
import { cupsText } from './sketch/cups.ts';
import { discText } from './sketch/disc.ts';
import { headerText } from './sketch/header.ts';
import { judgingText } from './sketch/judging.ts';
import { lineText } from './sketch/line.ts';
import { loopText } from './sketch/loop.ts';
import { readingText } from './sketch/reading.ts';

/** A program as a maker loads it into the controller. */
export interface Program {
  /** `<name>.ino`; the tools for these boards want a folder of the same name around it. */
  readonly fileName: string;
  readonly source: string;
}

/**
 * The controller program of an instrument: C++11, nothing but the board's own core, one file.
 *
 * It reads all channels, applies thresholds with hysteresis, looks the word up, counts cup pulses by interrupt,
 * and sends the line of docs/line-format.md.
 *
 * @param instrument - Its name and place come into comments only, with every sign that could end one taken out.
 * @param head - Board, thresholds [counts] and code of the same instrument.
 * @throws VanewrightError with every problem of `programProblems`.
 * @check test/journeys/programReads.test.ts
 */
export function programFor(instrument: Instrument, head: HeadPlan): Program {
  const facts = programFacts(instrument, head);
  const sections = [
    headerText(instrument, facts),
    circuitText(facts),
    discText(facts),
    readingText(facts),
    judgingText(facts),
    facts.cups ? cupsText(facts.cups) : null,
    lineText(facts),
    loopText(facts),
  ];
  return {
    fileName: `${programName(instrument.name)}.ino`,
    source: `${sections.filter((section) => section !== null).join('\n\n')}\n`,
  };
}
