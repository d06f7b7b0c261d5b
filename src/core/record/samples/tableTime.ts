import type { LedgerReason } from '../ledger/ledgerReasons.ts';
import { fieldNumber } from '../mess/fieldValue.ts';
import type { TableLayout } from '../mess/tableLayout.ts';
import type { ColumnRole } from '../mess/columnRole.ts';
import { isSetDate } from '../time/arrivalClock.ts';
import { timeOfDay, writtenTime } from '../time/dateText.ts';
import type { ZoneClock } from '../time/zoneClock.ts';

/** The time of one row: an instant, a counter, or nothing that can be read. */
export type RowTime =
  | { readonly atMs: number; readonly withinMs: number; readonly note: LedgerReason | null }
  | { readonly count: number; readonly msPerCount: number }
  | { readonly unset: number }
  | null;

/** A time written to the second is known to half of one. [ms] */
const WRITTEN_WITHIN_MS = 500;
const COUNTERS: readonly (readonly [ColumnRole, number])[] = [
  ['counter-ms', 1],
  ['counter-us', 0.001],
  ['counter-s', 1000],
];

/**
 * The time of a row.
 *
 * @param zone - Of times that do not say theirs.
 * @param beforeMs - Instant of the row before, to tell times that come twice. [ms UTC]
 * @returns `unset`: a clock that was never set, as a counter of milliseconds. [ms]
 */
export function rowTime(
  fields: readonly string[],
  layout: TableLayout,
  zone: ZoneClock,
  beforeMs: number | null,
): RowTime {
  const { roles, decimalComma, dateOrder } = layout;
  const number = (role: ColumnRole): number | null => {
    const at = roles.indexOf(role);
    return at < 0 ? null : fieldNumber(fields[at]!, decimalComma);
  };
  for (const [role, ms] of [
    ['unix-s', 1000],
    ['unix-ms', 1],
  ] as const) {
    if (!roles.includes(role)) continue;
    const value = number(role);
    if (value === null) return null;
    return isSetDate(value * ms) ? { atMs: value * ms, withinMs: ms / 2, note: null } : { unset: value * ms };
  }
  const instant = roles.indexOf('instant');
  const date = roles.indexOf('date');
  if (instant >= 0 || date >= 0) {
    const written = writtenAt(fields, instant, date, roles.indexOf('time-of-day'), dateOrder);
    if (!written) return null;
    if (!isSetDate(written.localMs)) return { unset: written.localMs };
    if (written.isZoned) return { atMs: written.localMs, withinMs: WRITTEN_WITHIN_MS, note: null };
    const { atMs, how } = zone.instantOf(written.localMs, beforeMs);
    const note = how === 'twice' ? 'summer-time-twice' : how === 'missing' ? 'summer-time-missing' : null;
    return { atMs, withinMs: WRITTEN_WITHIN_MS, note };
  }
  for (const [role, msPerCount] of COUNTERS) {
    const count = number(role);
    if (roles.includes(role)) return count === null || count < 0 ? null : { count, msPerCount };
  }
  return null;
}

function writtenAt(
  fields: readonly string[],
  instant: number,
  date: number,
  clock: number,
  order: TableLayout['dateOrder'],
) {
  if (instant >= 0) return writtenTime(fields[instant]!, order);
  const day = writtenTime(fields[date]!, order);
  if (!day || clock < 0) return day;
  const ofDay = timeOfDay(fields[clock]!);
  return ofDay === null ? null : { ...day, localMs: day.localMs + ofDay };
}
