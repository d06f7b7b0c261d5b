import type { Problem } from '../error/index.ts';
import { crc16 } from './crc16.ts';
import {
  COUNTER_MOST,
  COUNTS_MOST,
  LINE_CHANNELS_MOST,
  LINE_TAG,
  lineCharsAtMost,
  lineFields,
  lineFlags,
  NONE,
  NOT_READ,
  type Line,
  type LineField,
  type LineFlag,
} from './line.ts';
import { refusals, type RefusalCode } from './refusals.ts';

/** A line that was read, or the one reason why it was not. */
export type ParsedLine =
  { readonly ok: true; readonly line: Line } | { readonly ok: false; readonly refusal: Problem };

type Fields = Record<LineField, string>;

/** At most this much of a refused text is shown back. [characters] */
const SHOWN_MOST = 40;

function refused(code: RefusalCode, where: string, got: string, allowed?: string): ParsedLine {
  const shown = got.length > SHOWN_MOST ? `${got.slice(0, SHOWN_MOST)}… (${got.length} characters)` : got;
  const printable = shown.replace(/[^\x20-\x7e…]/g, '\ufffd');
  const row = refusals[code];
  return { ok: false, refusal: { code, where, got: printable, ...row, allowed: allowed ?? row.allowed } };
}

/** Whole number without sign, exponent or leading zero, or `null`. */
function wholeNumber(text: string, most: number): number | null {
  if (!/^(0|[1-9]\d{0,9})$/.test(text)) return null;
  const value = Number(text);
  return value <= most ? value : null;
}

/** Flags in the order they are sent, or `null` when one is unknown, twice there or out of order. */
function flagsOf(text: string): LineFlag[] | null {
  const flags = (Object.keys(lineFlags) as LineFlag[]).filter((flag) => text.includes(lineFlags[flag]));
  const canonical = flags.map((flag) => lineFlags[flag]).join('') || NONE;
  return text === canonical ? flags : null;
}

function cupsOf({ pulses, edges }: Fields): { cups: Line['cups'] } | { wrong: LineField } {
  if (pulses === NONE && edges === NONE) return { cups: null };
  const accepted = wholeNumber(pulses, COUNTER_MOST);
  if (accepted === null) return { wrong: 'pulses' };
  const raw = wholeNumber(edges, COUNTER_MOST);
  return raw === null ? { wrong: 'edges' } : { cups: { pulses: accepted, edges: raw } };
}

const allowedIn: Record<LineField, string> = {
  lineNumber: `a whole number, 0 to ${COUNTER_MOST}`,
  sinceStartMs: `a whole number of milliseconds, 0 to ${COUNTER_MOST}`,
  counts: `1 to ${LINE_CHANNELS_MOST} whole numbers joined by commas, each 0 to ${COUNTS_MOST} counts`,
  word: 'digits 0 to 2, one for each channel',
  heading: `hundredths of a degree, 0 to 35999, or ${NOT_READ} when not read`,
  flags: `${NONE}, or some of the letters ${Object.values(lineFlags).join('')} in this order, each once`,
  pulses: `a whole number, 0 to ${COUNTER_MOST}, or ${NONE} in both cup fields`,
  edges: `a whole number, 0 to ${COUNTER_MOST}, or ${NONE} in both cup fields`,
};

/** The values of fields whose check value was right. */
function valuesOf(fields: Fields): ParsedLine {
  const wrong = (field: LineField): ParsedLine =>
    refused('record/line-value', field, fields[field], allowedIn[field]);
  const lineNumber = wholeNumber(fields.lineNumber, COUNTER_MOST);
  if (lineNumber === null) return wrong('lineNumber');
  const sinceStartMs = wholeNumber(fields.sinceStartMs, COUNTER_MOST);
  if (sinceStartMs === null) return wrong('sinceStartMs');
  const read = fields.counts.split(',').map((text) => wholeNumber(text, COUNTS_MOST));
  const counts = read.filter((count) => count !== null);
  if (counts.length < read.length || counts.length > LINE_CHANNELS_MOST) return wrong('counts');
  const { word, heading } = fields;
  if (!/^[012]+$/.test(word)) return wrong('word');
  const hundredths = heading === NOT_READ ? null : wholeNumber(heading, 35_999);
  if (hundredths === null && heading !== NOT_READ) return wrong('heading');
  const flags = flagsOf(fields.flags);
  if (!flags) return wrong('flags');
  const cups = cupsOf(fields);
  if ('wrong' in cups) return wrong(cups.wrong);

  if (word.length !== counts.length) {
    return refused('record/line-contradicts', 'word', `${word.length} digits for ${counts.length} counts`);
  }
  if ((hundredths === null) !== flags.includes('illegalWord')) {
    return refused('record/line-contradicts', 'heading', `heading ${heading} with flags ${fields.flags}`);
  }
  const headingDeg = hundredths === null ? null : hundredths / 100;
  return { ok: true, line: { lineNumber, sinceStartMs, counts, word, headingDeg, flags, cups: cups.cups } };
}

/**
 * The line that a text holds, or the reason why it is none; it never throws and never repairs.
 *
 * @param text - One line without its line feed; one carriage return at the end is allowed.
 * @returns The line, or the first refusal in the order: length, characters, tag, version, fields, check value, values.
 * @check src/core/record/line.test.ts
 */
export function parseLine(text: string): ParsedLine {
  const bare = text.endsWith('\r') ? text.slice(0, -1) : text;
  if (bare.length >= lineCharsAtMost(LINE_CHANNELS_MOST)) return refused('record/line-long', 'line', bare);
  if (/[^\x20-\x7e]/.test(bare)) return refused('record/line-characters', 'line', bare);
  const [tag, ...rest] = bare.split(' ');
  if (tag !== LINE_TAG) {
    return refused(/^vw\d+$/.test(tag ?? '') ? 'record/line-version' : 'record/line-foreign', 'tag', bare);
  }
  if (rest.length !== lineFields.length + 1) {
    return refused('record/line-fields', 'line', `${rest.length + 1} fields`);
  }
  const check = rest.at(-1)!;
  const body = bare.slice(0, -check.length - 1);
  if (!/^[\dA-F]{4}$/.test(check) || parseInt(check, 16) !== crc16(body)) {
    return refused('record/line-check', 'check value', check);
  }
  return valuesOf(Object.fromEntries(lineFields.map((field, i) => [field, rest[i]!])) as Fields);
}
