import { fieldNumber, isDataField, roleOfName, rolesOf, wordDigits, type Role } from './columns.ts';
import { shown, WRAP, type Note, type RawFile, type RawRow } from './rawRows.ts';
import type { ReadingHints, Recording, Repair } from './recording.ts';
import type { Separation } from './separated.ts';
import type { TextLine } from './textLines.ts';

/** Rows looked at to tell what the columns hold. */
const SAMPLE_ROWS = 300;

/** One line taken apart. */
interface SplitLine {
  readonly line: TextLine;
  readonly fields: readonly string[];
}

/** What the columns of a file are. */
interface Columns {
  readonly roles: readonly Role[];
  readonly names: readonly string[];
  /** Digits of a word column. [-] */
  readonly digits: number;
  readonly isVolts: boolean;
}

/** A line that could be the names of columns: as many fields as data lines have, none of them data. */
function isHeading({ fields }: SplitLine, width: number): boolean {
  return fields.length === width && fields.every((field) => !isDataField(field) && /\p{L}/u.test(field));
}

/** `25. Mar` or `3/25/2024` where a number should be: a spreadsheet has taken it for a date. */
const DATE_FIELD = /^\d{1,2}[./-]\s?(\d{1,2}|\p{L}{3,4})[./-]?(\d{2,4})?$/u;

/** Rows of a file of separated columns. */
export function columnRows(
  file: string,
  lines: readonly TextLine[],
  separation: Separation,
  hints: ReadingHints,
): RawFile {
  const repairs: Repair[] = [];
  const note: Note = (line, kind, what) => void repairs.push({ file, line, kind, what });
  const { width, split } = separation;
  const all = lines.map((line) => ({ line, fields: split(line.text) }));
  const heading = separation.labels ? null : (all.find((line) => isHeading(line, width)) ?? null);
  const names = separation.labels ?? heading?.fields ?? null;
  // A mark is noted now and then: its field may stay empty.
  const mayBeEmpty = (c: number): boolean => names !== null && roleOfName(names[c]!) === 'mark';
  const whole = all.filter(
    ({ fields }) =>
      fields.length === width && fields.every((f, c) => isDataField(f) && (f !== '' || mayBeEmpty(c))),
  );
  const columns = columnsOf(names, whole.slice(0, SAMPLE_ROWS), whole, hints);
  noteColumns(columns, whole, note);
  const reader = new RowReader(columns, width, note, hints);
  for (const line of all) reader.take(line, heading);
  const clock = columns.roles.find((role) => role.startsWith('time')) ?? 'time-ms';
  return {
    file,
    content: contentOf(columns.roles),
    columns: columns.roles.flatMap((role, c) => (isValue(role) ? valueNames(columns, c) : [])),
    clockMs: clock === 'time-s' ? 1000 : clock === 'time-us' ? 0.001 : 1,
    wrapsAt: clock === 'time-s' ? WRAP / 1000 : WRAP,
    rows: reader.rows,
    repairs,
    lines: lines.length,
  };
}

const isValue = (role: Role): boolean =>
  role === 'counts' || role === 'bit' || role === 'word' || role === 'number';

function contentOf(roles: readonly Role[]): Recording['content'] {
  if (roles.includes('counts')) return 'counts';
  return roles.includes('number') ? 'numbers' : 'bits';
}

function valueNames({ roles, names, digits }: Columns, column: number): string[] {
  if (roles[column] !== 'word') return [names[column]!];
  return Array.from({ length: digits }, (_, c) => `digit ${c}`);
}

function columnsOf(
  names: readonly string[] | null,
  sample: readonly SplitLine[],
  whole: readonly SplitLine[],
  hints: ReadingHints,
): Columns {
  if (sample.length === 0) return { roles: [], names: [], digits: 0, isVolts: false };
  const roles = rolesOf(
    names,
    sample.map(({ fields }) => fields),
  );
  const word = roles.indexOf('word');
  const longest = whole.reduce(
    (most, { fields }) => Math.max(most, word < 0 ? 0 : wordDigits(fields[word]!)!.length),
    0,
  );
  const counted = roles.flatMap((role, c) => (role === 'counts' ? [c] : []));
  const values = sample.flatMap(({ fields }) => counted.map((c) => fieldNumber(fields[c]!)!));
  const isVolts = values.some((v) => !Number.isInteger(v)) && values.every((v) => v >= -0.1 && v <= 6);
  const given = names ?? roles.map((_, c) => `column ${roles.slice(0, c).filter(isValue).length}`);
  return { roles, names: given, digits: Math.max(longest, hints.channels ?? 0), isVolts };
}

function noteColumns(
  { roles, names, digits, isVolts }: Columns,
  whole: readonly SplitLine[],
  note: Note,
): void {
  const out = names.filter((_, c) => roles[c] === 'left-out');
  if (out.length > 0) note(0, 'left-out-column', `Not used here: ${out.map(shown).join(', ')}.`);
  const commas = whole.filter(({ fields }) => fields.some((field) => /^\d*,\d+$/.test(field))).length;
  if (commas > 0)
    note(0, 'decimal-comma', `Read the comma inside numbers of ${commas} lines as a decimal comma.`);
  if (isVolts) note(0, 'volts', 'Turned volts into counts of the converter.');
  const word = roles.indexOf('word');
  const short =
    word < 0 ? 0 : whole.filter(({ fields }) => wordDigits(fields[word]!)!.length < digits).length;
  if (short > 0)
    note(0, 'zeros-restored', `Gave ${short} words back the zeros in front, to ${digits} digits.`);
}

/** Takes lines one after another and keeps those that hold a whole row. */
class RowReader {
  readonly rows: RawRow[] = [];
  #startsAnew = false;
  #seenData = false;
  readonly #columns: Columns;
  readonly #width: number;
  readonly #note: Note;
  readonly #hints: ReadingHints;

  constructor(columns: Columns, width: number, note: Note, hints: ReadingHints) {
    this.#columns = columns;
    this.#width = width;
    this.#note = note;
    this.#hints = hints;
  }

  take({ line, fields }: SplitLine, heading: SplitLine | null): void {
    if (heading && isHeading({ line, fields }, this.#width)) {
      this.#note(line.number, 'heading-line', `Names of columns: ${shown(line.text)}.`);
      this.#startsAnew = this.#seenData;
      return;
    }
    if (fields.every(isDataField)) {
      this.#takeData(line, fields);
      return;
    }
    if (fields.length === this.#width && fields.some((field) => DATE_FIELD.test(field))) {
      this.#note(
        line.number,
        'spreadsheet',
        `Left out "${shown(line.text)}": a spreadsheet has made a date of a number.`,
      );
      return;
    }
    const isText = /^[\x20-\x7e]*[A-Za-z]{3,}[\x20-\x7e]*$/.test(line.text);
    if (isText && fields.filter((field) => fieldNumber(field) !== null).length <= 1) {
      this.#note(line.number, 'ready-text', `Words of a program, as at its start: "${shown(line.text)}".`);
      this.#startsAnew = this.#seenData;
    } else {
      this.#note(line.number, 'rubbish', `Left out what is no row: "${shown(line.text)}".`);
    }
  }

  #takeData(line: TextLine, fields: readonly string[]): void {
    const width = this.#width;
    const isEmpty = (field: string, c: number): boolean => field === '' && this.#columns.roles[c] !== 'mark';
    if (fields.length === width && !fields.some(isEmpty)) {
      this.#add(line, fields);
      return;
    }
    if (fields.some(isEmpty)) {
      this.#note(line.number, 'missing-value', `Left out a row with a value missing: "${shown(line.text)}".`);
      return;
    }
    if (fields.length > width) {
      const apart = width > 1 && fields.length === 2 * width - 1 ? this.#unglued(fields) : null;
      if (apart) {
        this.#note(
          line.number,
          'split-line',
          `Parted two rows that stood on one line: "${shown(line.text)}".`,
        );
        for (const row of apart) this.#add(line, row);
      } else {
        this.#note(
          line.number,
          'glued-line',
          `Left out a line of ${fields.length} fields where ${width} belong: rows ran together.`,
        );
      }
      return;
    }
    this.#note(
      line.number,
      'cut-line',
      `Left out a row cut short, ${fields.length} of ${width} fields: "${shown(line.text)}".`,
    );
  }

  /** Two rows on one line, parted where the clock of the second follows the first by the usual step; else `null`. */
  #unglued(fields: readonly string[]): string[][] | null {
    const width = this.#width;
    if (!this.#columns.roles[0]?.startsWith('time') || this.rows.length < 3) return null;
    const clocks = this.rows.slice(-20).map((row) => row.clock!);
    const steps = clocks
      .slice(1)
      .map((clock, i) => clock - clocks[i]!)
      .sort((a, b) => a - b);
    const step = steps[steps.length >> 1]!;
    const joined = fields[width - 1]!;
    const first = fieldNumber(fields[0]!)!;
    const ways: string[][][] = [];
    for (let cut = 1; cut < joined.length; cut++) {
      const [left, right] = [joined.slice(0, cut), joined.slice(cut)];
      const clock = fieldNumber(right);
      if (clock === null || fieldNumber(left) === null || /^0\d/.test(right)) continue;
      if (Math.abs(clock - first - step) > 0.2 * step) continue;
      ways.push([
        [...fields.slice(0, width - 1), left],
        [right, ...fields.slice(width)],
      ]);
    }
    return ways.length === 1 ? ways[0]! : null;
  }

  #add(line: TextLine, fields: readonly string[]): void {
    const { roles } = this.#columns;
    const clockAt = roles.findIndex((role) => role.startsWith('time'));
    const markAt = roles.indexOf('mark');
    const values = roles.flatMap((role, c) => (isValue(role) ? this.#values(role, fields[c]!) : []));
    const clock = clockAt < 0 ? line.monitorMs : fieldNumber(fields[clockAt]!);
    const markDeg = markAt < 0 ? null : fieldNumber(fields[markAt]!);
    const bad = values.find((value) => !Number.isFinite(value));
    if (bad !== undefined || (clockAt >= 0 && clock === null)) {
      this.#note(
        line.number,
        'not-a-number',
        `Left out a row with a field that is no number: "${shown(line.text)}".`,
      );
      return;
    }
    const most = (this.#hints.scaleCounts ?? 65_536) - 1;
    if (roles.includes('counts') && values.some((value) => value < 0 || value > most)) {
      this.#note(
        line.number,
        'out-of-range',
        `Left out a row with counts outside 0..${most}: "${shown(line.text)}".`,
      );
      return;
    }
    this.#seenData = true;
    this.rows.push({ line: line.number, clock, values, markDeg, startsAnew: this.#startsAnew });
    this.#startsAnew = false;
  }

  #values(role: Role, field: string): number[] {
    if (role === 'word' || role === 'bit') {
      const digits = wordDigits(field);
      if (digits === null) return [Number.NaN];
      if (role === 'bit') return digits.length === 1 ? [Number(digits)] : [Number.NaN];
      return digits.length > this.#columns.digits
        ? [Number.NaN]
        : Array.from(digits.padStart(this.#columns.digits, '0'), Number);
    }
    const value = fieldNumber(field) ?? Number.NaN;
    if (role === 'number' || !this.#columns.isVolts) return [value];
    const { scaleCounts = 1024, supplyV = 5 } = this.#hints;
    return [Math.min(scaleCounts - 1, Math.max(0, (value / supplyV) * scaleCounts))];
  }
}
