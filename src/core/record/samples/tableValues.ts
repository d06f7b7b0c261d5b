import { wrapDegrees } from '../../units/index.ts';
import type { LedgerReason } from '../ledger/ledgerReasons.ts';
import { compassHeading } from '../mess/compassName.ts';
import type { ColumnRole } from '../mess/columnRole.ts';
import { fieldNumber, isSpreadsheetWork } from '../mess/fieldValue.ts';
import { M_PER_S_OF, type SpeedColumnUnit } from '../mess/speedColumn.ts';
import type { TableLayout } from '../mess/tableLayout.ts';

/** Values of one row of a log, or why the row is left out. */
export type RowValues =
  | {
      readonly headingDeg: number | null;
      readonly speedMPerS: number | null;
      readonly gustMPerS: number | null;
      readonly pulses: number | null;
      readonly word: string | null;
      /** What else is to be told about the row. */
      readonly notes: readonly LedgerReason[];
    }
  | { readonly dropped: LedgerReason };

/** Numbers that stand for "not read" in logs of sensors and services (common practice, no source). */
const NOT_READ_HEADING = new Set([-1, -99, -99.99, -999, -999.9, -9999, 990, 999, 9999, 32_767, 65_535]);
const NOT_READ_SPEED = new Set([-1, -99, -99.99, -999, -999.9, -9999, 255, 999, 999.9, 9999, 32_767, 65_535]);
/** Vanes that count past north give up to one and a half turns. [deg] */
const HEADING_MOST = 540;

type Read<T> = { readonly value: T; readonly note?: LedgerReason } | { readonly dropped: LedgerReason };

function unreadable(field: string): { dropped: LedgerReason } {
  if (field === '') return { dropped: 'missing-value' };
  return { dropped: isSpreadsheetWork(field) ? 'spreadsheet' : 'bad-value' };
}

function headingOf(field: string, layout: TableLayout): Read<number | null> {
  if (layout.headingAs === 'names') {
    const named = compassHeading(field, layout.compassLanguage);
    if (named !== null) return { value: named };
    if (/^(calm|c|vrb|variable|-+)$/i.test(field)) return { value: null, note: 'sentinel' };
    return unreadable(field);
  }
  const value = fieldNumber(field, layout.decimalComma);
  if (value === null) return unreadable(field);
  if (layout.headingAs === 'positions') {
    const isPosition = Number.isInteger(value) && value >= 0 && value < 360 / layout.positionDeg;
    if (isPosition) return { value: value * layout.positionDeg };
    return NOT_READ_HEADING.has(value) || value === 255
      ? { value: null, note: 'sentinel' }
      : { dropped: 'bad-value' };
  }
  if (value >= 0 && value < 360) return { value };
  if (layout.isSigned && value >= -180 && value < 0) return { value: wrapDegrees(value) };
  if (NOT_READ_HEADING.has(value)) return { value: null, note: 'sentinel' };
  if (value >= 360 && value <= HEADING_MOST) return { value: wrapDegrees(value), note: 'full-turn' };
  return { dropped: 'bad-value' };
}

function speedOf(field: string, unit: SpeedColumnUnit, layout: TableLayout): Read<number | null> {
  const value = fieldNumber(field, layout.decimalComma);
  if (value === null) return unreadable(field);
  if (NOT_READ_SPEED.has(value)) return { value: null, note: 'sentinel' };
  return value < 0 ? { dropped: 'negative-speed' } : { value: value * M_PER_S_OF[unit] };
}

function countOf(field: string, layout: TableLayout): Read<number | null> {
  const value = fieldNumber(field, layout.decimalComma);
  if (value === null) return unreadable(field);
  return Number.isInteger(value) && value >= 0 ? { value } : { dropped: 'bad-value' };
}

function wordOf(field: string, channels: number | null): Read<string | null> {
  if (!/^[012]+$/.test(field)) return unreadable(field);
  if (channels === null || field.length === channels) return { value: field };
  if (field.length > channels) return { dropped: 'bad-value' };
  return { value: field.padStart(channels, '0'), note: 'zeros-restored' };
}

/**
 * Values of one row; a field that cannot be read drops the row, and no value moves to another column.
 *
 * @param fields - As many as the layout has columns.
 * @param layout - As `tableLayout` gives it.
 * @param channels - Digits of a word, where known. [-]
 * @param speedMostMPerS - Faster than that is noted. [m/s]
 * @check src/core/record/samples/streamReader.test.ts
 */
export function rowValues(
  fields: readonly string[],
  layout: TableLayout,
  channels: number | null,
  speedMostMPerS: number,
): RowValues {
  const notes: LedgerReason[] = [];
  const field = (role: ColumnRole): string | null => {
    const at = layout.roles.indexOf(role);
    return at < 0 ? null : fields[at]!;
  };
  const take = <T>(read: Read<T>): T | { dropped: LedgerReason } => {
    if ('dropped' in read) return read;
    if (read.note) notes.push(read.note);
    return read.value;
  };
  const speedField = field('speed');
  const speed = speedField === null ? null : take(speedOf(speedField, layout.speedUnit, layout));
  if (isDropped(speed)) return speed;
  const headingField = field('heading');
  // No wind and no direction: 0 stands for calm and not for north.
  const isCalm =
    speed === 0 && (headingField === '' || Number(headingField) === 0) && layout.headingAs !== 'positions';
  const heading = headingField === null || isCalm ? null : take(headingOf(headingField, layout));
  if (isDropped(heading)) return heading;
  if (isCalm && headingField !== null) notes.push('calm');
  const gustField = field('gust');
  const gust = !gustField ? null : take(speedOf(gustField, layout.gustUnit, layout));
  if (isDropped(gust)) return gust;
  const pulsesField = field('pulses');
  const pulses = pulsesField === null ? null : take(countOf(pulsesField, layout));
  if (isDropped(pulses)) return pulses;
  const wordField = field('word');
  const word = wordField === null ? null : take(wordOf(wordField, channels));
  if (isDropped(word)) return word;
  if (Math.max(speed ?? 0, gust ?? 0) > speedMostMPerS) notes.push('absurd-speed');
  return { headingDeg: heading, speedMPerS: speed, gustMPerS: gust, pulses, word, notes };
}

function isDropped(value: unknown): value is { dropped: LedgerReason } {
  return typeof value === 'object' && value !== null;
}
