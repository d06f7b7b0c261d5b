import type { ErrorCode, YAMLParseError } from 'yaml';
import { quoted } from '../problems/words.ts';
import type { PlacedProblem } from './placedProblem.ts';
import type { Places } from './places.ts';

interface Reading {
  readonly what: string;
  readonly allowed: string;
  readonly fix: string;
}

const INDENT: Reading = {
  what: 'The indentation does not fit the lines above.',
  allowed: 'fields of one group at the same column, two spaces deeper than the name of the group',
  fix: 'Line the fields of this group up with spaces.',
};
const QUOTE: Reading = {
  what: 'A quoted text is not written as YAML has it.',
  allowed: 'text between two quotation marks of one kind',
  fix: 'Close the quotation mark, or use single quotes round text with a backslash.',
};

/** Plain words for what a maker is likely to meet; everything else gets `OTHER`. */
const READINGS: Partial<Record<ErrorCode, Reading>> = {
  TAB_AS_INDENT: {
    what: 'A line is indented with a tab.',
    allowed: 'spaces only',
    fix: 'Replace the tab with two spaces.',
  },
  BAD_INDENT: INDENT,
  BAD_DQ_ESCAPE: QUOTE,
  MULTILINE_IMPLICIT_KEY: {
    what: 'The name of a field runs over more than one line, or the colon after it is missing.',
    allowed: 'a name, a colon, a space and a value on one line',
    fix: 'Write the field as `name: value`.',
  },
  MISSING_CHAR: {
    what: 'A sign is missing here, most likely a colon, a comma, a bracket or a quotation mark.',
    allowed: '`name: value`, one a line',
    fix: 'Write the field as `name: value`, and close every bracket and quotation mark.',
  },
  BLOCK_AS_IMPLICIT_KEY: {
    what: 'One line holds two fields, or a value with a colon in it.',
    allowed: 'one `name: value` a line',
    fix: 'Put each field on a line of its own, or put the value between quotation marks.',
  },
  BAD_ALIAS: {
    what: 'A * or & is not followed by a name.',
    allowed: 'text without * or & at its start',
    fix: 'Put the text between quotation marks.',
  },
};

const OTHER: Reading = {
  what: 'The file is not YAML here.',
  allowed: '`name: value`, one a line, groups indented by two spaces',
  fix: 'Compare this line with a fresh file from `vanewright new`.',
};

/** How far a line is followed to either side; an error shows no more. [characters] */
const NEIGHBOURHOOD = 80;

/** The line round a place. */
function lineAt(text: string, offset: number): string {
  const before = text.slice(Math.max(0, offset - NEIGHBOURHOOD), offset);
  const after = text.slice(offset, offset + NEIGHBOURHOOD);
  return `${before.slice(before.lastIndexOf('\n') + 1)}${after.split('\n', 1)[0]!}`.trim();
}

/** What the YAML reader stumbled over, in a maker's words. */
export function syntaxProblem(error: YAMLParseError, text: string, places: Places): PlacedProblem {
  const [offset] = error.pos;
  const reading = READINGS[error.code] ?? OTHER;
  const line = lineAt(text, offset);
  const got = line === '' ? 'an empty line' : quoted(line);
  return { offset, problem: { code: 'instrument/not-yaml', ...reading, where: places.at(offset), got } };
}
