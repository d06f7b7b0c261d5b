import { orderTold, timeOfDay, writtenTime, type DateOrder } from '../time/dateText.ts';
import { compassLanguage, type CompassLanguage } from './compassName.ts';
import { namedColumn, type ColumnRole } from './columnRole.ts';
import { fieldNumber, separators, type Separator } from './fieldValue.ts';
import type { SpeedColumnUnit } from './speedColumn.ts';

/** Choices of the maker that a layout obeys. */
export interface LayoutWish {
  readonly decimalComma: boolean | null;
  readonly dateOrder: DateOrder | null;
  readonly speedUnit: SpeedColumnUnit | null;
  readonly headingAs: 'degrees' | 'positions' | null;
  readonly compassLanguage: CompassLanguage | null;
  readonly positions: number | null;
}

/** What the columns of a log are. */
export interface TableLayout {
  readonly separator: Separator;
  /** Fields of a line. [-] */
  readonly width: number;
  readonly decimalComma: boolean;
  readonly names: readonly string[];
  readonly roles: readonly ColumnRole[];
  readonly dateOrder: DateOrder;
  readonly speedUnit: SpeedColumnUnit;
  readonly gustUnit: SpeedColumnUnit;
  readonly headingAs: 'degrees' | 'positions' | 'names';
  /** Angle between two positions, for headings as positions. [deg] */
  readonly positionDeg: number;
  readonly compassLanguage: CompassLanguage;
  /** Headings run from -180 to 180. */
  readonly isSigned: boolean;
  /** What of this was guessed. */
  readonly guesses: readonly (
    'date-order' | 'decimal-comma' | 'speed-unit' | 'heading-codes' | 'compass-language'
  )[];
}

const isTime = (text: string): boolean => timeOfDay(text) !== null || orderTold(text) !== null;

/** Whether a field could be data: number, time, compass point or nothing. */
function isData(text: string, decimalComma: boolean): boolean {
  return (
    text === '' || fieldNumber(text, decimalComma) !== null || isTime(text) || /^[NESWO]{1,3}$/i.test(text)
  );
}

/** A line that could be the names of columns: all letters, no data. */
export function isHeadingLine(fields: readonly string[], width: number): boolean {
  if (fields.length !== width) return false;
  const named = fields.map((field) => namedColumn(field).role);
  const words = fields.every((field) => /\p{L}/u.test(field) && !isTime(field));
  return words && named.some((role) => role !== 'other');
}

interface Parting {
  readonly separator: Separator;
  readonly width: number;
  readonly decimalComma: boolean;
  readonly score: number;
}

/** The sign that leaves most lines with equally many fields of data. */
function partingOf(lines: readonly string[], wish: LayoutWish): Parting | null {
  let best: Parting | null = null;
  for (const separator of Object.keys(separators) as Separator[]) {
    if (separator === 'pairs' && wish.decimalComma !== true) continue;
    const isComma = separator === 'comma' || separator === 'pairs';
    const decimalComma = isComma ? false : (wish.decimalComma ?? true);
    const widths = new Map<number, number>();
    for (const line of lines) {
      const fields = separators[separator](line);
      const data = fields.filter((field) => isData(field, decimalComma)).length;
      if (data >= 0.6 * fields.length && fields.length > 1) {
        widths.set(fields.length, (widths.get(fields.length) ?? 0) + 1);
      }
    }
    for (const [width, count] of widths) {
      const score = count * (1 + 0.01 * Math.min(width, 20));
      if (!best || score > best.score) best = { separator, width, decimalComma, score };
    }
  }
  return best;
}

const column = (rows: readonly (readonly string[])[], c: number): string[] =>
  rows.map((row) => row[c]!).filter((field) => field !== '');
const most = (fields: readonly string[], test: (field: string) => boolean): boolean =>
  fields.length > 0 && fields.filter(test).length > 0.7 * fields.length;

/** Role of a column by what is in it. */
function roleByContent(fields: readonly string[], named: ColumnRole, decimalComma: boolean): ColumnRole {
  if (most(fields, (field) => /\d[T ]+\d{1,2}:\d{2}/.test(field) && orderTold(field) !== null))
    return 'instant';
  if (most(fields, (field) => /\d[./-]\d/.test(field) && writtenOnly(field))) return 'date';
  if (most(fields, (field) => timeOfDay(field) !== null)) return 'time-of-day';
  const numbers = fields.map((field) => fieldNumber(field, decimalComma)).filter((value) => value !== null);
  const isTimed =
    named === 'instant' || named === 'date' || named.startsWith('unix') || named.startsWith('counter');
  const rises =
    numbers.length > 2 &&
    numbers.slice(1).filter((v, i) => v > numbers[i]!).length >= 0.8 * (numbers.length - 1);
  if ((isTimed || named === 'other') && numbers.length > 0.7 * fields.length && (rises || isTimed)) {
    const middle = numbers[numbers.length >> 1]!;
    if (middle > 1e11 && middle < 5e12) return 'unix-ms';
    if (middle > 5e8 && middle < 5e9 && named !== 'counter-ms' && named !== 'counter-us') return 'unix-s';
    if (named.startsWith('counter')) return named;
    return isTimed ? counterByStep(numbers) : 'other';
  }
  return named;
}

const writtenOnly = (field: string): boolean =>
  writtenTime(field, 'day-first') !== null || writtenTime(field, 'month-first') !== null;

function counterByStep(numbers: readonly number[]): ColumnRole {
  const steps = numbers.slice(1).map((value, i) => value - numbers[i]!);
  const usual = steps.filter((step) => step > 0).sort((a, b) => a - b)[steps.length >> 1] ?? 1000;
  if (usual < 50) return 'counter-s';
  return usual > 100_000 ? 'counter-us' : 'counter-ms';
}

/** Without names, the first columns of numbers are taken as heading and speed, as makers print them. */
function withUnnamed(
  roles: ColumnRole[],
  rows: readonly (readonly string[])[],
  decimalComma: boolean,
): ColumnRole[] {
  const has = (role: ColumnRole): boolean => roles.includes(role);
  const free = (test: (fields: string[]) => boolean): number =>
    roles.findIndex((role, c) => role === 'other' && test(column(rows, c)));
  const isNumbers = (fields: readonly string[]): boolean =>
    most(fields, (field) => fieldNumber(field, decimalComma) !== null);
  const found = [...roles];
  const heading = has('heading')
    ? -1
    : free((f) => most(f, (x) => /^[NESWO]{1,3}$/i.test(x)) || isNumbers(f));
  if (heading >= 0) found[heading] = 'heading';
  const speed = has('speed')
    ? -1
    : found.findIndex((role, c) => role === 'other' && isNumbers(column(rows, c)));
  if (speed >= 0) found[speed] = 'speed';
  return found;
}

/**
 * What the columns of a log are, from its first lines.
 *
 * @param lines - Some lines, whole and messy ones. n ≥ 1
 * @param wish - What the maker has said.
 * @returns `null` when no sign makes a time and a value of anything.
 * @check src/core/record/mess/tableLayout.test.ts
 */
export function tableLayout(lines: readonly string[], wish: LayoutWish): TableLayout | null {
  const parting = partingOf(lines, wish);
  if (!parting) return null;
  const { separator, width } = parting;
  const all = lines.map(separators[separator]).filter((fields) => fields.length === width);
  const names = all.find((fields) => isHeadingLine(fields, width)) ?? null;
  const rows = all.filter((fields) => fields !== names && !isHeadingLine(fields, width));
  if (rows.length === 0) return null;
  return layoutOf(parting, names, rows, wish);
}

/** A layout from names, or none, and rows. */
function layoutOf(
  { separator, width, decimalComma: mayComma }: Parting,
  names: readonly string[] | null,
  rows: readonly (readonly string[])[],
  wish: LayoutWish,
): TableLayout | null {
  const hasComma = mayComma && rows.some((row) => row.some((field) => /^[+-]?\d+,\d+$/.test(field)));
  const decimalComma = wish.decimalComma ?? hasComma;
  const named = Array.from({ length: width }, (_, c) => namedColumn(names?.[c] ?? ''));
  const byContent = named.map(({ role }, c) => roleByContent(column(rows, c), role, decimalComma));
  const roles = onceEach(names ? byContent : withUnnamed(byContent, rows, decimalComma));
  if (!roles.some(isTimeRole) || !roles.some((role) => role === 'heading' || role === 'speed')) return null;
  const unitOf = (role: ColumnRole) => named[roles.indexOf(role)]?.speedUnit ?? null;
  const speedUnit = wish.speedUnit ?? unitOf('speed') ?? unitOf('gust');
  const order = dateOrderOf(rows, roles, wish);
  const heading = headingOf(column(rows, roles.indexOf('heading')), decimalComma, wish);
  const guesses: TableLayout['guesses'][number][] = [];
  if (order === null) guesses.push('date-order');
  if (hasComma && wish.decimalComma === null) guesses.push('decimal-comma');
  if (speedUnit === null && roles.includes('speed')) guesses.push('speed-unit');
  if (heading.headingAs === 'positions' && wish.headingAs === null) guesses.push('heading-codes');
  if (heading.isOpen) guesses.push('compass-language');
  return {
    separator,
    width,
    decimalComma,
    names: names ?? roles.map((_, c) => `column ${c + 1}`),
    roles,
    dateOrder: order ?? 'day-first',
    speedUnit: speedUnit ?? 'm/s',
    gustUnit: wish.speedUnit ?? unitOf('gust') ?? speedUnit ?? 'm/s',
    ...heading,
    guesses,
  };
}

const isTimeRole = (role: ColumnRole): boolean =>
  role === 'instant' || role === 'date' || role.startsWith('unix') || role.startsWith('counter');

/** The first column of each role keeps it. */
function onceEach(roles: readonly ColumnRole[]): ColumnRole[] {
  return roles.map((role, c) => (roles.indexOf(role) === c ? role : 'other'));
}

function dateOrderOf(
  rows: readonly (readonly string[])[],
  roles: readonly ColumnRole[],
  wish: LayoutWish,
): DateOrder | null {
  if (wish.dateOrder) return wish.dateOrder;
  const at = roles.findIndex((role) => role === 'instant' || role === 'date');
  if (at < 0) return 'year-first';
  const told = new Set(rows.map((row) => orderTold(row[at]!)));
  if (told.has('day-first') && !told.has('month-first')) return 'day-first';
  if (told.has('month-first') && !told.has('day-first')) return 'month-first';
  // A dot between day and month is German and its neighbours': day first.
  if (rows.every((row) => /^\d{1,2}\.\d{1,2}\./.test(row[at]!))) return 'day-first';
  return told.has('open') || told.has('month-first') ? null : 'year-first';
}

type HeadingWay = Pick<TableLayout, 'headingAs' | 'positionDeg' | 'compassLanguage' | 'isSigned'> & {
  readonly isOpen: boolean;
};

/** Counts of positions that discs of logs without degrees have. [-] */
const POSITION_COUNTS = [16, 32];

function headingOf(fields: readonly string[], decimalComma: boolean, wish: LayoutWish): HeadingWay {
  const plain: HeadingWay = {
    headingAs: 'degrees',
    positionDeg: 360 / (wish.positions ?? 16),
    compassLanguage: wish.compassLanguage ?? 'english',
    isSigned: false,
    isOpen: false,
  };
  const words = fields.filter((field) => /^[A-Z]+$/i.test(field));
  if (words.length > 0.5 * fields.length) {
    const language = compassLanguage(words.filter((word) => /^[NESWO]{1,3}$/i.test(word)));
    const told = language === null || language === 'open' ? 'german' : language;
    const isOpen = language === 'open' && wish.compassLanguage === null;
    return { ...plain, headingAs: 'names', compassLanguage: wish.compassLanguage ?? told, isOpen };
  }
  const numbers = fields.map((field) => fieldNumber(field, decimalComma)).filter((value) => value !== null);
  const isSigned = new Set(numbers.filter((v) => v < -1 && v >= -180)).size > 3;
  if (wish.headingAs === 'degrees') return { ...plain, isSigned };
  const top = Math.max(...numbers.filter((v) => v < 900));
  const count = wish.positions ?? POSITION_COUNTS.find((n) => top < n) ?? 32;
  const isCodes = top < count && numbers.every(Number.isInteger) && new Set(numbers).size >= 8;
  if (wish.headingAs === 'positions' || isCodes) {
    return { ...plain, headingAs: 'positions', positionDeg: 360 / count, isSigned };
  }
  return { ...plain, isSigned };
}
