import { badReading, requirePositive } from '../refusal.ts';

/** Ten minutes, the period of a mean wind (WMO-No. 8, section 5.1.1). [ms] */
export const TEN_MINUTES_MS = 600_000;

/**
 * End of the period that an instant belongs to, which is also the period's label.
 *
 * Periods are counted from 1970-01-01 UTC and include their end: 12:10:00 belongs to (12:00:00, 12:10:00].
 * A midnight label closes the day before it.
 *
 * @param atMs - Instant. [ms UTC]
 * @param periodMs - Length of a period. [ms], > 0
 * @returns End of the period. [ms UTC]
 * @throws `wind/bad-reading` when either is no usable number.
 * @source EPA-454/R-99-005 (2000), section 7.1 (records are labelled by the end of the period).
 * @check src/core/wind/period/periodClock.test.ts
 */
export function periodEnd(atMs: number, periodMs: number): number {
  if (!Number.isFinite(atMs)) throw badReading('periodEnd(atMs)', atMs, 'a finite time in ms');
  requirePositive(periodMs, 'periodEnd(periodMs)', 'ms');
  return Math.ceil(atMs / periodMs) * periodMs || 0; // || 0: never -0
}

/**
 * Samples that the clock says a span should hold, whatever was received.
 *
 * @param spanMs - Length of the span. [ms], > 0
 * @param intervalMs - Time between two samples. [ms], > 0
 * @returns [-]
 * @throws `wind/bad-reading` when either is not above 0.
 * @source EPA-454/R-99-005 (2000), section 5.3.2 (completeness against the whole period).
 * @check src/core/wind/period/periodClock.test.ts
 */
export function expectedReadings(spanMs: number, intervalMs: number): number {
  requirePositive(spanMs, 'expectedReadings(spanMs)', 'ms');
  requirePositive(intervalMs, 'expectedReadings(intervalMs)', 'ms');
  return spanMs / intervalMs;
}
