/** Order in which a date is written. */
export type DateOrder = 'day-first' | 'month-first' | 'year-first';

/** A date, a time of day or both, as written. */
export interface WrittenTime {
  /** As if it were UTC, or the instant itself when the text says its zone. [ms] */
  readonly localMs: number;
  /** Whether the text says its zone, as `Z` or `+01:00` do. */
  readonly isZoned: boolean;
}

const ISO =
  /^(\d{4})-(\d{1,2})-(\d{1,2})(?:[T ]+(\d{1,2}):(\d{2})(?::(\d{2})(?:[.,](\d{1,9}))?)?)?\s*(Z|UTC|[+-]\d{2}:?\d{2})?$/i;
const PARTED =
  /^(\d{1,4})[./-](\d{1,2})[./-](\d{1,4})(?:,?[T ]+(\d{1,2}):(\d{2})(?::(\d{2})(?:[.,](\d{1,9}))?)?\s*([AP]M)?)?$/i;
const TIME = /^(\d{1,2}):(\d{2})(?::(\d{2})(?:[.,](\d{1,9}))?)?\s*([AP]M)?$/i;

const milliseconds = (digits: string | undefined): number => (digits ? Number(`0.${digits}`) * 1000 : 0);

/** Hour of a clock that may say AM or PM; `null` when there is none. [h] */
function hourOf(text: string | undefined, half: string | undefined): number | null {
  const hour = Number(text ?? 0);
  if (!half) return hour <= 24 ? hour : null;
  if (hour < 1 || hour > 12) return null;
  return (hour % 12) + (half.toUpperCase() === 'PM' ? 12 : 0);
}

/** Milliseconds of date and time as if UTC; `null` when there is no such day or time. [ms] */
function instant(
  date: readonly [number, number, number],
  hour: number | null,
  rest: readonly number[],
): number | null {
  const [year, month, day] = date;
  const [minute, second, ms] = rest as [number, number, number];
  if (hour === null || minute > 59 || second > 60 || (hour === 24 && minute + second > 0)) return null;
  if (year < 1 || month < 1 || month > 12 || day < 1 || day > 31) return null;
  const dayMs = Date.UTC(year < 100 ? 2000 + year : year, month - 1, day);
  if (new Date(dayMs).getUTCDate() !== day) return null;
  return dayMs + ((hour * 60 + minute) * 60 + second) * 1000 + ms;
}

function offsetMs(zone: string): number {
  const parts = /^([+-])(\d{2}):?(\d{2})$/.exec(zone);
  if (!parts) return 0;
  return (parts[1] === '-' ? -1 : 1) * (Number(parts[2]) * 60 + Number(parts[3])) * 60_000;
}

function isoTime(text: string): WrittenTime | null {
  const parts = ISO.exec(text);
  if (!parts) return null;
  const [, year, month, day, hour, minute = 0, second = 0, part, zone] = parts;
  const localMs = instant([Number(year), Number(month), Number(day)], hourOf(hour, undefined), [
    Number(minute),
    Number(second),
    milliseconds(part),
  ]);
  if (localMs === null) return null;
  return zone ? { localMs: localMs - offsetMs(zone), isZoned: true } : { localMs, isZoned: false };
}

function partedTime(text: string, order: DateOrder): WrittenTime | null {
  const parts = PARTED.exec(text);
  if (!parts) return null;
  const [, a, b, c, hour, minute = 0, second = 0, part, half] = parts;
  const [first, middle, last] = [Number(a), Number(b), Number(c)];
  const isYearFirst = a!.length === 4 || order === 'year-first';
  const date: [number, number, number] = isYearFirst
    ? [first, middle, last]
    : order === 'month-first'
      ? [last, first, middle]
      : [last, middle, first];
  const rest = [Number(minute), Number(second), milliseconds(part)];
  const localMs = instant(date, hourOf(hour, half), rest);
  return localMs === null ? null : { localMs, isZoned: false };
}

/**
 * A date with or without a time of day, as people and programs write it.
 *
 * @param text - `2026-11-25T12:00:00Z`, `25.11.2026 12:00`, `11/25/2026 1:05 PM` and their like.
 * @param order - Of dates that are not ISO 8601.
 * @returns `null` when it is none, or there is no such day. [ms]
 * @source ISO 8601-1:2019 for the first form; the others are common practice, no source.
 * @check src/core/record/time/dateText.test.ts
 */
export function writtenTime(text: string, order: DateOrder): WrittenTime | null {
  return isoTime(text) ?? partedTime(text, order);
}

/** Time since midnight of `21:00:48.335` or `9:00 PM`; `null` when the text is none. [ms] */
export function timeOfDay(text: string): number | null {
  const parts = TIME.exec(text);
  if (!parts) return null;
  const [, hour, minute, second = 0, part, half] = parts;
  return instant([1970, 1, 1], hourOf(hour, half), [Number(minute), Number(second), milliseconds(part)]);
}

/** What a text tells about the order of its date: the order, `open` when it could be two, `null` when it is no date. */
export function orderTold(text: string): DateOrder | 'open' | null {
  if (ISO.test(text)) return 'year-first';
  const parts = PARTED.exec(text);
  if (!parts) return null;
  if (parts[1]!.length === 4) return 'year-first';
  const [first, second] = [Number(parts[1]), Number(parts[2])];
  if (first > 12) return 'day-first';
  return second > 12 ? 'month-first' : 'open';
}
