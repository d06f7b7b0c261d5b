import type { Problem } from '../error/index.ts';
import { crc16 } from './crc16.ts';
import {
  COUNTER_MOST,
  COUNTS_MOST,
  GUST_MOST,
  LINE_CHANNELS_MOST,
  LINE_TAG,
  lineCharsAtMost,
  lineFields,
  lineFlags,
  NONE,
  NOT_READ,
  type Line,
  type LineAverage,
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

/** A piece of what came in, in print and not all of a long text. */
export function shownText(got: string): string {
  const shown = got.length > SHOWN_MOST ? `${got.slice(0, SHOWN_MOST)}… (${got.length} characters)` : got;
  return shown.replace(/[^\x20-\x7e…]/g, '\ufffd');
}

/** The refusal of a text. */
export function refused(
  code: RefusalCode,
  where: string,
  got: string,
  allowed?: string,
): Extract<ParsedLine, { ok: false }> {
  const row = refusals[code];
  return {
    ok: false,
    refusal: { code, where, got: shownText(got), ...row, allowed: allowed ?? row.allowed },
  };
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

/** What came of one group of fields: its values, or the field that is wrong. */
type Group<T> = { readonly value: T } | { readonly wrong: LineField };

function cupsOf({ pulses, edges, gust }: Fields): Group<Line['cups']> {
  if (pulses === NONE && edges === NONE && gust === NONE) return { value: null };
  const accepted = wholeNumber(pulses, COUNTER_MOST);
  if (accepted === null) return { wrong: 'pulses' };
  const raw = wholeNumber(edges, COUNTER_MOST);
  if (raw === null) return { wrong: 'edges' };
  const gustPulses = gust === NONE ? null : wholeNumber(gust, GUST_MOST);
  if (gustPulses === null && gust !== NONE) return { wrong: 'gust' };
  return { value: { pulses: accepted, edges: raw, gustPulses } };
}

/** A number of hundredths or thousandths, `null` for `?`, `undefined` for anything else. */
function shareOf(text: string, most: number, per: number): number | null | undefined {
  if (text === NOT_READ) return null;
  const value = wholeNumber(text, most);
  return value === null ? undefined : value / per;
}

function averageOf({ mean, agreement }: Fields): Group<LineAverage | null> {
  if (mean === NONE && agreement === NONE) return { value: null };
  const headingDeg = shareOf(mean, 35_999, 100);
  if (headingDeg === undefined) return { wrong: 'mean' };
  const length = shareOf(agreement, 1000, 1000);
  if (length === undefined || (length === null && headingDeg !== null)) return { wrong: 'agreement' };
  return { value: { headingDeg, agreement: length } };
}

const allowedIn: Record<LineField, string> = {
  lineNumber: `a whole number, 0 to ${COUNTER_MOST}`,
  sinceStartMs: `a whole number of milliseconds, 0 to ${COUNTER_MOST}`,
  counts: `1 to ${LINE_CHANNELS_MOST} whole numbers joined by commas, each 0 to ${COUNTS_MOST} counts`,
  word: 'digits 0 to 2, one for each channel',
  heading: `hundredths of a degree, 0 to 35999, or ${NOT_READ} when not read`,
  halfWidth: `hundredths of a degree, 0 to 18000, or ${NOT_READ} when not read`,
  flags: `${NONE}, or some of the letters ${Object.values(lineFlags).join('')} in this order, each once`,
  mean: `hundredths of a degree, 0 to 35999, ${NOT_READ} for none, or ${NONE} in both fields of the mean`,
  agreement: `thousandths, 0 to 1000, ${NOT_READ} when nothing was read, or ${NONE} in both fields of the mean`,
  pulses: `a whole number, 0 to ${COUNTER_MOST}, or ${NONE} in both cup fields`,
  edges: `a whole number, 0 to ${COUNTER_MOST}, or ${NONE} in both cup fields`,
  gust: `a whole number, 0 to ${GUST_MOST}, or ${NONE} when not worked out`,
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
  const headingDeg = shareOf(heading, 35_999, 100);
  if (headingDeg === undefined) return wrong('heading');
  const halfWidthDeg = shareOf(fields.halfWidth, 18_000, 100);
  if (halfWidthDeg === undefined) return wrong('halfWidth');
  const flags = flagsOf(fields.flags);
  if (!flags) return wrong('flags');
  const average = averageOf(fields);
  if ('wrong' in average) return wrong(average.wrong);
  const cups = cupsOf(fields);
  if ('wrong' in cups) return wrong(cups.wrong);
  return consistent({
    lineNumber,
    sinceStartMs,
    counts,
    word,
    headingDeg,
    halfWidthDeg,
    flags,
    average: average.value,
    cups: cups.value,
  });
}

/** The line, unless two of its fields contradict each other. */
export function consistent(line: Line): ParsedLine {
  const { counts, word, headingDeg, halfWidthDeg, flags } = line;
  const contradicts = (field: LineField, got: string): ParsedLine =>
    refused('record/line-contradicts', field, got);
  const shownFlags = flags.map((flag) => lineFlags[flag]).join('') || NONE;
  if (word.length !== counts.length && 3 * word.length !== counts.length) {
    return contradicts('word', `${word.length} digits for ${counts.length} counts`);
  }
  if ((headingDeg === null) !== flags.includes('illegalWord')) {
    return contradicts('heading', `heading ${headingDeg ?? NOT_READ} with flags ${shownFlags}`);
  }
  if ((headingDeg === null) !== (halfWidthDeg === null)) {
    return contradicts(
      'halfWidth',
      `heading ${headingDeg ?? NOT_READ}, half width ${halfWidthDeg ?? NOT_READ}`,
    );
  }
  if (headingDeg === null && flags.includes('interpolated')) {
    return contradicts('flags', `no heading with flags ${shownFlags}`);
  }
  return { ok: true, line };
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
