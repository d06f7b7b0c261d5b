import { VanewrightError } from '../error/index.ts';
import { crcText } from './formatLine.ts';
import {
  COUNTER_MOST,
  COUNTS_MOST,
  GUST_MOST,
  LINE_CHANNELS_MOST,
  lineFlags,
  type Line,
  type LineFlag,
} from './line.ts';
import { consistent, refused, type ParsedLine } from './parseLine.ts';

/** Longest JSON line that any controller can send. [characters] */
const JSON_CHARS_MOST = 1200;

/** Name before the check value; what the check covers ends here. */
const CHECK_KEY = ',"check":"';

const decimals = (value: number | null, places: number): string =>
  value === null ? 'null' : value.toFixed(places);

/** A heading in hundredths; one that rounds to a full turn is 0. [deg] */
const heading = (value: number | null): string =>
  value === null ? 'null' : decimals((Math.round(value * 100) % 36_000) / 100, 2);

/** Everything before the check value. */
function body(line: Line): string {
  const { average, cups } = line;
  const mean = average
    ? `{"headingDeg":${heading(average.headingDeg)},"agreement":${decimals(average.agreement, 3)}}`
    : 'null';
  const pulses = cups
    ? `{"pulses":${cups.pulses},"edges":${cups.edges},"gustPulses":${cups.gustPulses}}`
    : 'null';
  return [
    `{"vw":1,"lineNumber":${line.lineNumber}`,
    `"sinceStartMs":${line.sinceStartMs}`,
    `"counts":[${line.counts.join(',')}]`,
    `"word":"${line.word}"`,
    `"headingDeg":${heading(line.headingDeg)}`,
    `"halfWidthDeg":${decimals(line.halfWidthDeg, 2)}`,
    `"flags":"${line.flags.map((flag) => lineFlags[flag]).join('')}"`,
    `"average":${mean}`,
    `"cups":${pulses}`,
  ].join(',');
}

/**
 * Length of the longest JSON line, its line feed counted.
 *
 * @param channels - Light sensors. [-], 1..64
 * @param countsAtMost - Largest reading of the converter. [counts]
 * @param countsEach - Counts of one channel: three for one that looks in three colours. [-]
 * @returns A little more than any real line: a heading and the flag that says there is none never come together. [characters]
 */
export function jsonCharsAtMost(channels: number, countsAtMost: number, countsEach: 1 | 3 = 1): number {
  const longest = body({
    lineNumber: COUNTER_MOST,
    sinceStartMs: COUNTER_MOST,
    counts: new Array<number>(countsEach * channels).fill(countsAtMost),
    word: '1'.repeat(channels),
    headingDeg: 359.99,
    halfWidthDeg: 180,
    flags: Object.keys(lineFlags) as LineFlag[],
    average: { headingDeg: 359.99, agreement: 1 },
    cups: { pulses: COUNTER_MOST, edges: COUNTER_MOST, gustPulses: GUST_MOST },
  });
  return longest.length + CHECK_KEY.length + '0000"}\n'.length;
}

/**
 * A line as one object of JSON Lines, with the fields of docs/line-format.md and its check value.
 *
 * @param line - Its angles are rounded to hundredths. [deg]
 * @throws The refusal of `parseJsonLine` for a line that the format cannot say.
 * @check src/core/record/jsonLine.test.ts
 */
export function formatJsonLine(line: Line): string {
  const text = body(line);
  const whole = `${text}${CHECK_KEY}${crcText(text)}"}`;
  const parsed = parseJsonLine(whole);
  if (!parsed.ok) throw new VanewrightError(parsed.refusal);
  return whole;
}

const isWhole = (value: unknown, most: number): value is number =>
  Number.isInteger(value) && (value as number) >= 0 && (value as number) <= most;

const isAngle = (value: unknown, most: number): value is number | null =>
  value === null || (typeof value === 'number' && value >= 0 && value <= most);

const isFields = (value: unknown): value is Record<string, unknown> =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

function flagsOf(text: unknown): LineFlag[] | null {
  if (typeof text !== 'string') return null;
  const flags = (Object.keys(lineFlags) as LineFlag[]).filter((flag) => text.includes(lineFlags[flag]));
  return text === flags.map((flag) => lineFlags[flag]).join('') ? flags : null;
}

/** Whether each value may stand in its field; what they say together is `consistent`'s. */
const fits: Record<string, (value: unknown) => boolean> = {
  vw: (value) => value === 1,
  lineNumber: (value) => isWhole(value, COUNTER_MOST),
  sinceStartMs: (value) => isWhole(value, COUNTER_MOST),
  counts: (value) =>
    Array.isArray(value) &&
    value.length >= 1 &&
    value.length <= LINE_CHANNELS_MOST &&
    value.every((count) => isWhole(count, COUNTS_MOST)),
  word: (value) => typeof value === 'string' && /^[012]+$/.test(value),
  headingDeg: (value) => isAngle(value, 359.99),
  halfWidthDeg: (value) => isAngle(value, 180),
  flags: (value) => flagsOf(value) !== null,
  average: (value) =>
    value === null ||
    (isFields(value) &&
      isAngle(value.headingDeg, 359.99) &&
      isAngle(value.agreement, 1) &&
      !(value.agreement === null && value.headingDeg !== null)),
  cups: (value) =>
    value === null ||
    (isFields(value) &&
      isWhole(value.pulses, COUNTER_MOST) &&
      isWhole(value.edges, COUNTER_MOST) &&
      (value.gustPulses === null || isWhole(value.gustPulses, GUST_MOST))),
};

function jsonOf(text: string): Record<string, unknown> | null {
  try {
    const value: unknown = JSON.parse(text);
    return isFields(value) ? value : null;
  } catch {
    return null;
  }
}

/**
 * The line that one object of JSON Lines holds, or the reason why it is none; it never throws and never repairs.
 *
 * It must be written exactly as `formatJsonLine` does: order of fields, decimals, no spaces.
 *
 * @param text - Without its line feed; one carriage return at the end is allowed.
 * @check src/core/record/jsonLine.test.ts
 */
export function parseJsonLine(text: string): ParsedLine {
  const bare = text.endsWith('\r') ? text.slice(0, -1) : text;
  if (bare.length > JSON_CHARS_MOST) return refused('record/line-long', 'line', bare);
  if (/[^\x20-\x7e]/.test(bare)) return refused('record/line-characters', 'line', bare);
  const fields = jsonOf(bare);
  if (!fields || !('vw' in fields)) return refused('record/line-foreign', 'line', bare);
  if (fields.vw !== 1) return refused('record/line-version', 'vw', bare);
  const at = bare.lastIndexOf(CHECK_KEY);
  if (bare.slice(at) !== `${CHECK_KEY}${crcText(bare.slice(0, at))}"}`) {
    return refused('record/line-check', 'check', bare.slice(at));
  }
  for (const [name, isFit] of Object.entries(fits)) {
    if (!isFit(fields[name]))
      return refused('record/line-value', name, JSON.stringify(fields[name]) ?? 'nothing');
  }
  const line = { ...fields, flags: flagsOf(fields.flags)! } as unknown as Line & Record<string, unknown>;
  const { lineNumber, sinceStartMs, counts, word, headingDeg, halfWidthDeg, flags, average, cups } = line;
  const parsed = consistent({
    lineNumber,
    sinceStartMs,
    counts,
    word,
    headingDeg,
    halfWidthDeg,
    flags,
    average,
    cups,
  });
  if (parsed.ok && body(parsed.line) !== bare.slice(0, at)) {
    return refused(
      'record/line-fields',
      'line',
      bare,
      'the fields of docs/line-format.md in their order, written as there',
    );
  }
  return parsed;
}
