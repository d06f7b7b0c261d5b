const DAY_MS = 86_400_000;

/** A time by its first and last day, of UTC. */
export interface DaySpan {
  readonly first: string;
  readonly last: string;
}

/** Day of an instant, such as 2026-03-01. [ms UTC] */
export function dayOf(atMs: number): string {
  return new Date(atMs).toISOString().slice(0, 10);
}

/** Beginning of a day; `null` where the words name none. [ms UTC] */
export function beginningOf(day: string): number | null {
  const atMs = /^\d{4}-\d\d-\d\d$/.test(day) ? Date.parse(`${day}T00:00:00Z`) : NaN;
  return Number.isNaN(atMs) ? null : atMs;
}

/** Window of whole days: after its start and up to its end; `null` where it has none. [ms UTC] */
export function windowOf({ first, last }: DaySpan): { sinceMs: number; untilMs: number } | null {
  const [sinceMs, lastMs] = [beginningOf(first), beginningOf(last)];
  if (sinceMs === null || lastMs === null || lastMs < sinceMs) return null;
  return { sinceMs, untilMs: lastMs + DAY_MS };
}

/** Whole days that a stretch touches. [ms UTC] */
export function daysTouched(sinceMs: number, untilMs: number): DaySpan {
  return { first: dayOf(sinceMs), last: dayOf(Math.max(sinceMs, untilMs - 1)) };
}

/** The last days of a record. @param days - [-] */
export function lastDays(untilMs: number, days: number): DaySpan {
  return { first: dayOf(untilMs - 1 - (days - 1) * DAY_MS), last: dayOf(untilMs - 1) };
}

/** Place of a day in a calendar of weeks that begin on Monday: column and row, from the first day's week on. */
export function placeOf(day: number, firstDay: number): { readonly week: number; readonly row: number } {
  // 1970-01-01 was a Thursday.
  const row = (((day + 3) % 7) + 7) % 7;
  const monday = firstDay - ((((firstDay + 3) % 7) + 7) % 7);
  return { week: Math.floor((day - monday) / 7), row };
}

/** Number of a day, counted from 1970. [ms UTC] */
export function dayNumber(atMs: number): number {
  return Math.floor(atMs / DAY_MS);
}
