import type { Instrument } from '../../instrument/index.ts';
import { LINE_TAG, lineFields, NONE, NOT_READ, lineFlags, type LineField } from '../../record/index.ts';
import type { ProgramFacts } from '../facts.ts';
import { inertWords } from './text.ts';

const meaning: Record<LineField, string> = {
  lineNumber: 'lines sent before this one',
  sinceStartMs: 'milliseconds since the start',
  counts: 'what the converter read on each channel, always, channel 0 first',
  word: 'what the channels read after the thresholds',
  heading: `where the wind comes from, hundredths of a degree clockwise from true north, or ${NOT_READ}`,
  flags:
    `${lineFlags.impossibleJump} jumped further than the shaft can turn,\n//                 ` +
    `${lineFlags.illegalBefore} a word that the disc does not have came and went, ` +
    `${lineFlags.illegalWord} this word is one`,
  pulses: `cup pulses since the start, or ${NONE} without cups`,
  edges: 'all edges of the cup switch since the start, bounces too',
};

/** What the program is, for whom, and what it sends. */
export function headerText({ name, site }: Instrument, facts: ProgramFacts): string {
  const { wiring, positions } = facts;
  const fields = lineFields.map((field) => `//   ${field.padEnd(14)}${meaning[field]}`);
  return `// Reads a coded disc by light and says where the wind comes from.
//   instrument    ${inertWords(name)}
//   place         ${inertWords(site.place)}
//   board         ${wiring.board.title}
//   disc          ${positions} positions, ${wiring.channelPins.length} channels
//
// Made by vanewright from the instrument file. Change that file and make the program again, so that
// disc, wiring and program stay together.
//
// Every ${facts.lineIntervalMs} ms it sends one line, at ${facts.baud} bit/s, with a space between the fields:
//   ${'tag'.padEnd(14)}${LINE_TAG}
${fields.join('\n')}
//   ${'check'.padEnd(14)}check value of everything before it

#include <Arduino.h>`;
}
