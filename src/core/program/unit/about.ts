import type { Instrument } from '../../instrument/index.ts';
import { LINE_TAG, lineFields, lineFlags, NONE, NOT_READ, type LineField } from '../../record/index.ts';
import type { ProgramFacts } from '../facts.ts';
import { inertWords } from './text.ts';

const meaning: Record<LineField, string> = {
  lineNumber: 'lines sent before this one',
  sinceStartMs: 'milliseconds since the start',
  counts: 'what was read on each channel, always, channel 0 first',
  word: 'what the channels read after the thresholds',
  heading: `where the wind comes from, hundredths of a degree clockwise from true north, or ${NOT_READ}`,
  halfWidth: 'largest error of that heading, hundredths of a degree',
  flags:
    `${lineFlags.impossibleJump} jumped further than the shaft can turn,\n//                 ` +
    `${lineFlags.illegalBefore} a word that the disc does not have came and went, ` +
    `${lineFlags.illegalWord} this word is one;\n//                 the others are in docs/line-format.md`,
  mean: `mean direction since the line before, hundredths of a degree, or ${NONE}`,
  agreement: `length of that mean in thousandths, or ${NONE}`,
  pulses: `cup pulses since the start, or ${NONE} without cups`,
  edges: 'all edges of the cup switch since the start, bounces too',
  gust: `most pulses in any 3 s since the line before, or ${NONE}`,
};

const formatNotes: Record<ProgramFacts['format'], string> = {
  text: 'one line with a space between the fields',
  'json-lines': 'one JSON object; a recorded turn sends lines with a space between the fields',
  'nmea-mwd': 'one MWD sentence; a recorded turn sends lines with a space between the fields',
  'nmea-mwv': 'one MWV sentence; a recorded turn sends lines with a space between the fields',
  senml: 'one SenML pack; a recorded turn sends lines with a space between the fields',
};

/** What the program is, for whom, and what it sends, as comments behind a mark of the language. */
export function aboutText(
  { name, site, asBuilt }: Instrument,
  facts: ProgramFacts,
  mark: '//' | '#',
): string {
  const { wiring, positions } = facts;
  const fields = lineFields.map((field) => `//   ${field.padEnd(14)}${meaning[field]}`);
  const text = `// Reads a coded disc by light and says where the wind comes from.
//   instrument    ${inertWords(name)}
//   place         ${inertWords(site.place)}
//   board         ${wiring.board.title}
//   disc          ${positions} positions, ${wiring.channelPins.length} channels, table ${facts.hash}
//   read          ${asBuilt ? 'as a recorded turn of the finished build has shown it' : 'as it was drawn'}
//
// Made by vanewright from the instrument file. Change that file and make the program again, so that
// disc, wiring and program stay together.
//
// Every ${facts.lineIntervalMs} ms it sends ${formatNotes[facts.format]}:
//   ${'tag'.padEnd(14)}${LINE_TAG}
${fields.join('\n')}
//   ${'check'.padEnd(14)}check value of everything before it
// It answers the commands settings, turn, stop, thresholds, north and forget.`;
  return mark === '//' ? text : text.replace(/^\/\//gm, mark);
}
