import { VanewrightError, type Problem } from '../error/index.ts';
import type { Degrees } from '../units/index.ts';
import { crcText } from './formatLine.ts';
import { COUNTS_MOST, LINE_CHANNELS_MOST, NONE } from './line.ts';
import { refused } from './parseLine.ts';

/** First field of a status line. */
export const STATUS_TAG = 'vws1';

/** Fields of a status line in the order they are sent, between the tag and the check value. */
export const statusFields = ['table', 'start', 'kept', 'north', 'thresholds', 'stuck'] as const;

/** Why the controller started, by the letter that is sent. */
export const startReasons = {
  /** Supply came on. */
  power: 'p',
  /** The supply sagged so far that the chip stopped. */
  brownOut: 'b',
  /** The program hung, and its watchdog started it again. */
  watchdog: 'w',
  /** The reset pin, mostly a serial port that was opened. */
  outside: 'x',
  /** The chip did not say, such as after a boot loader. */
  unknown: 'u',
} as const;
/** Name of a reason. */
export type StartReason = keyof typeof startReasons;

/** What a controller says at the start, and when it is asked for its settings. */
export interface StatusLine {
  /** Short name of the table it reads by: eight digits 0-9 a-f. */
  readonly table: string;
  readonly start: StartReason;
  /** Whether thresholds and north were kept from before, or are those of the program. */
  readonly kept: boolean;
  /** Added to every heading of the table. [deg], [0, 360) */
  readonly northDeg: Degrees;
  /** Thresholds of each channel; two pairs a channel for three greys, lower pairs first of each. [counts], n ≥ 1 */
  readonly thresholds: readonly { readonly low: number; readonly high: number }[];
  /** Channels of the instrument. [-], 1..64 */
  readonly channels: number;
  /** Channels that should have changed several times and have not. [-], rising */
  readonly stuck: readonly number[];
}

/** A status line that was read, or the one reason why it was not. */
export type ParsedStatus =
  { readonly ok: true; readonly status: StatusLine } | { readonly ok: false; readonly refusal: Problem };

function body(status: StatusLine): string {
  const { table, start, kept, northDeg, thresholds, stuck } = status;
  const values: Record<(typeof statusFields)[number], string> = {
    table,
    start: startReasons[start],
    kept: kept ? 'k' : NONE,
    north: String(Math.round(northDeg * 100) % 36_000),
    thresholds: thresholds.map(({ low, high }) => `${low}:${high}`).join(','),
    stuck: Array.from({ length: status.channels }, (_, channel) =>
      stuck.includes(channel) ? '1' : '0',
    ).join(''),
  };
  return [STATUS_TAG, ...statusFields.map((field) => values[field])].join(' ');
}

/**
 * A status line as text; docs/line-format.md says what each field means.
 *
 * @param status - Its north is rounded to hundredths. [deg]
 * @throws The refusal of `parseStatus` for what the format cannot say.
 * @check src/core/record/statusLine.test.ts
 */
export function formatStatus(status: StatusLine): string {
  const text = body(status);
  const whole = `${text} ${crcText(text)}`;
  const parsed = parseStatus(whole);
  if (!parsed.ok) throw new VanewrightError(parsed.refusal);
  return whole;
}

/** Characters of the longest status line, its line feed counted. [characters] */
export function statusCharsAtMost(channels: number, countsAtMost: number = COUNTS_MOST): number {
  const counts = String(countsAtMost).length;
  const fields = [STATUS_TAG.length, 8, 1, 1, 5, channels * (2 * counts + 2) - 1, channels, 4];
  return fields.reduce((sum, chars) => sum + chars + 1, 0);
}

const patterns = [
  /^[\da-f]{8}$/,
  /^[pbwxu]$/,
  /^[k-]$/,
  /^(0|[1-9]\d{0,4})$/,
  /^\d{1,5}:\d{1,5}(,\d{1,5}:\d{1,5})*$/,
  /^[01]+$/,
];

/** The values of fields whose check value was right, or the index of the field that is wrong. */
function statusOf(fields: readonly string[]): StatusLine | number {
  const wrong = patterns.findIndex((pattern, i) => !pattern.test(fields[i]!));
  if (wrong >= 0) return wrong;
  const [table, start, kept, north, pairs, stuck] = fields as [
    string,
    string,
    string,
    string,
    string,
    string,
  ];
  const thresholds = pairs.split(',').map((pair) => {
    const [low, high] = pair.split(':').map(Number) as [number, number];
    return { low, high };
  });
  if (Number(north) > 35_999) return 3;
  const isSound = thresholds.every(({ low, high }) => low < high && high <= COUNTS_MOST);
  if (!isSound || thresholds.length > LINE_CHANNELS_MOST) return 4;
  if (thresholds.length !== stuck.length && thresholds.length !== 2 * stuck.length) return 5;
  return {
    table,
    start: (Object.keys(startReasons) as StartReason[]).find((name) => startReasons[name] === start)!,
    kept: kept === 'k',
    northDeg: Number(north) / 100,
    thresholds,
    channels: stuck.length,
    stuck: [...stuck].flatMap((digit, channel) => (digit === '1' ? [channel] : [])),
  };
}

/**
 * The status line that a text holds, or the reason why it is none; it never throws and never repairs.
 *
 * @param text - One line without its line feed; one carriage return at the end is allowed.
 * @check src/core/record/statusLine.test.ts
 */
export function parseStatus(text: string): ParsedStatus {
  const bare = text.endsWith('\r') ? text.slice(0, -1) : text;
  if (bare.length > statusCharsAtMost(LINE_CHANNELS_MOST)) return refused('record/line-long', 'line', bare);
  if (/[^\x20-\x7e]/.test(bare)) return refused('record/line-characters', 'line', bare);
  const [tag, ...rest] = bare.split(' ');
  if (tag !== STATUS_TAG)
    return refused('record/line-foreign', 'tag', bare, `a line that begins with ${STATUS_TAG}`);
  if (rest.length !== statusFields.length + 1) {
    const allowed = `${statusFields.length + 2} fields with one space between them`;
    return refused('record/line-fields', 'line', `${rest.length + 1} fields`, allowed);
  }
  const check = rest.at(-1)!;
  if (check !== crcText(bare.slice(0, -check.length - 1)))
    return refused('record/line-check', 'check value', check);
  const status = statusOf(rest);
  if (typeof status === 'number') return refused('record/line-value', statusFields[status]!, rest[status]!);
  if (body(status) !== bare.slice(0, -check.length - 1)) {
    return refused('record/line-value', 'thresholds', rest[4]!, 'numbers without leading zeros');
  }
  return { ok: true, status };
}
