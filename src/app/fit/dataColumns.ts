import { VanewrightError } from '../../core/error/index.ts';

/** Columns of numbers read from a file, a row a line. */
export interface DataColumns {
  readonly rows: readonly (readonly number[])[];
  /** Lines that are no row of numbers, left out. [1 = first line] */
  readonly leftOut: readonly number[];
}

/** More than this share of lines left out, and the file is not what it is taken for. [-]; own choice */
const MOST_LEFT_OUT = 0.2;

const SPLITS = [';', '\t', ','] as const;

/** Factor that makes a time of this heading milliseconds; `time` holds instants. [ms] */
const TIMES: Readonly<Record<string, number>> = { time_us: 0.001, time_ms: 1, time_s: 1000, time: 1 };

/** Name under which a column of times is asked for, in whatever unit the file has it; given in [ms]. */
export const TIME = 'time_s';

function split(line: string, sign: string): string[] {
  return line.split(sign).map((field) =>
    field
      .trim()
      .replace(/^"(.*)"$/, '$1')
      .trim(),
  );
}

const tidy = (heading: string): string =>
  heading
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, '_')
    .replace(/^_|_$/g, '');

/** A number of a field, or `null`. An instant must say its zone. */
function valueOf(field: string | undefined, heading: string, sign: string): number | null {
  if (field === undefined || field === '') return null;
  if (heading === 'time' && /^\d{4}-\d\d-\d\d[T ].*(Z|[+-]\d\d:?\d\d)$/.test(field)) {
    const at = Date.parse(field.replace(' ', 'T'));
    return Number.isNaN(at) ? null : at;
  }
  const plain = sign === ',' ? field : field.replace(',', '.');
  const value = /^[+-]?(\d+([.]\d*)?|[.]\d+)(e[+-]?\d+)?$/i.test(plain) ? Number(plain) : NaN;
  return Number.isFinite(value) ? value * (TIMES[heading] ?? 1) : null;
}

/** Place of a wanted column; a time may have any of its headings. */
function placeOf(headings: readonly string[], name: string): number {
  return headings.findIndex((heading) => (name === TIME ? heading in TIMES : heading === name));
}

/**
 * Columns of numbers by their headings; other columns are left alone.
 *
 * Parted by comma, semicolon or tab; with the latter two the decimal sign may be a comma. Times come as milliseconds.
 *
 * @param name - File, shown in problems.
 * @param wanted - Headings; the first set that the file has is taken.
 * @throws `fit/no-column`, `fit/rows-unread`
 */
export function dataColumns(
  text: string,
  name: string,
  ...wanted: readonly (readonly string[])[]
): DataColumns & { readonly headings: readonly string[] } {
  const lines = text.replace(/^\ufeff/, '').split(/\r\n|\r|\n/);
  const first = lines.findIndex((line) => line.trim() !== '' && !line.startsWith('#'));
  const top = lines[first] ?? '';
  const sign = SPLITS.find((one) => top.includes(one)) ?? ',';
  const headings = split(top, sign).map(tidy);
  const found = wanted.find((names) => names.every((one) => placeOf(headings, one) >= 0));
  if (!found) throw noColumn(name, headings, wanted);
  const places = found.map((one) => placeOf(headings, one));
  const rows: number[][] = [];
  const leftOut: number[] = [];
  for (const [i, line] of lines.entries()) {
    if (i <= first || line.trim() === '' || line.startsWith('#')) continue;
    const fields = split(line, sign);
    const row = places.map((place) => valueOf(fields[place], headings[place]!, sign));
    // More fields than headings: a decimal comma between commas, whose halves would pass for numbers.
    const isTooLong = fields.slice(headings.length).some((field) => field !== '');
    if (!isTooLong && row.every((value) => value !== null)) rows.push(row);
    else leftOut.push(i + 1);
  }
  if (rows.length === 0 || leftOut.length > MOST_LEFT_OUT * (rows.length + leftOut.length)) {
    throw rowsUnread(name, rows.length, leftOut);
  }
  return { rows, leftOut, headings: found };
}

function noColumn(
  name: string,
  headings: readonly string[],
  wanted: readonly (readonly string[])[],
): VanewrightError {
  const sets = wanted.map((names) => names.join(', ')).join('; or ');
  return new VanewrightError({
    code: 'fit/no-column',
    what: 'The file lacks a column, or its first line does not name its columns.',
    where: name,
    got: headings.filter((heading) => heading !== '').join(', ') || 'no headings',
    allowed: `${sets} (the time may be time_ms, time_us or time with instants such as 2024-05-17T10:30:00Z)`,
    fix: `Make the first line: ${wanted[0]!.join(',')}`,
  });
}

function rowsUnread(name: string, read: number, leftOut: readonly number[]): VanewrightError {
  return new VanewrightError({
    code: 'fit/rows-unread',
    what: 'Too many lines of the file are no rows of numbers.',
    where: leftOut.length > 0 ? `${name}:${leftOut[0]}` : name,
    got: `${read} rows read, ${leftOut.length} lines left out`,
    allowed: `at most ${100 * MOST_LEFT_OUT} lines in 100 left out`,
    fix: 'Save the file as plain CSV: one row a line, numbers such as 3.25, times with their zone such as 2024-05-17T10:30:00Z.',
  });
}
