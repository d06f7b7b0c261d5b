import { VanewrightError } from '../error/index.ts';
import type { Degrees } from '../units/index.ts';
import { crc16 } from './crc16.ts';
import { LINE_TAG, lineFields, lineFlags, NONE, NOT_READ, type Line, type LineField } from './line.ts';
import { parseLine } from './parseLine.ts';

/** A heading in hundredths of a degree; a full turn is 0. */
function hundredthsText(heading: Degrees | null): string {
  return heading === null ? NOT_READ : String(Math.round(heading * 100) % 36_000);
}

const written: Record<LineField, (line: Line) => string> = {
  lineNumber: ({ lineNumber }) => String(lineNumber),
  sinceStartMs: ({ sinceStartMs }) => String(sinceStartMs),
  counts: ({ counts }) => counts.join(','),
  word: ({ word }) => word,
  heading: ({ headingDeg }) => hundredthsText(headingDeg),
  halfWidth: ({ halfWidthDeg }) =>
    halfWidthDeg === null ? NOT_READ : String(Math.round(halfWidthDeg * 100)),
  flags: ({ flags }) => flags.map((flag) => lineFlags[flag]).join('') || NONE,
  mean: ({ average }) => (average ? hundredthsText(average.headingDeg) : NONE),
  agreement: ({ average }) => {
    if (!average) return NONE;
    return average.agreement === null ? NOT_READ : String(Math.round(average.agreement * 1000));
  },
  pulses: ({ cups }) => (cups ? String(cups.pulses) : NONE),
  edges: ({ cups }) => (cups ? String(cups.edges) : NONE),
  gust: ({ cups }) => String(cups?.gustPulses ?? NONE),
};

/**
 * A line as text, with its check value and without a line feed; docs/line-format.md says what each field means.
 *
 * @param line - Its heading is rounded to hundredths. [deg]
 * @throws The refusal of `parseLine` for a line that the format cannot say, such as counts below 0.
 * @check src/core/record/line.test.ts
 */
export function formatLine(line: Line): string {
  const body = [LINE_TAG, ...lineFields.map((field) => written[field](line))].join(' ');
  const text = `${body} ${crcText(body)}`;
  const parsed = parseLine(text);
  if (!parsed.ok) throw new VanewrightError(parsed.refusal);
  return text;
}

/** Check value of everything before the last space, as a line shows it. */
export function crcText(body: string): string {
  return crc16(body).toString(16).toUpperCase().padStart(4, '0');
}
