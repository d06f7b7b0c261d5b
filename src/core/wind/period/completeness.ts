import { badReading, requirePositive } from '../refusal.ts';

/** Share of a quarter of a year that must be there, for each variable and for both together. [-] */
export const QUARTER_COMPLETE = 0.9; // EPA-454/R-99-005, section 5.3.2; not 0.75, which is another rule

/** Share of a 10-minute period that must be there for its mean to stand. [-]; common practice, from memory. */
export const PERIOD_COMPLETE = 0.75;

/** Valid 15-minute values that make an hour, of four. [-]; EPA-454/R-99-005, section 6.1 */
export const QUARTERS_OF_AN_HOUR = 2;

/** What was usable of a span. */
export interface Counted {
  /** Readings expected by the clock; calibration and repair time is part of it. [-], > 0 */
  readonly expected: number;
  /** Readings with a usable speed. [-] */
  readonly speed: number;
  /** Readings with a usable direction, a calm counting as usable. [-] */
  readonly heading: number;
  /** Readings with both. [-] */
  readonly both: number;
}

/** Shares of a span that were usable. [-] */
export interface Completeness {
  readonly speed: number;
  readonly heading: number;
  readonly both: number;
}

/**
 * Usable share of a span for speed, direction and both; above 1 where more came than the clock expects.
 *
 * @param counted - Counts of one span. [-]
 * @returns Shares. [-]
 * @throws `wind/bad-reading` when a count is negative or not finite, or nothing is expected.
 * @source EPA-454/R-99-005 (2000), section 5.3.2 (per variable and jointly).
 * @check test/published/epa-454-r-99-005/completeness.test.ts
 */
export function completeness(counted: Counted): Completeness {
  const { expected, speed, heading, both } = counted;
  requirePositive(expected, 'completeness(expected)', 'readings');
  for (const count of [speed, heading, both]) {
    if (!(count >= 0 && Number.isFinite(count))) {
      throw badReading('completeness(counted)', count, 'a count of 0 or more');
    }
  }
  return { speed: speed / expected, heading: heading / expected, both: both / expected };
}

/**
 * Whether four quarters in a row are each complete enough to stand for a year.
 *
 * @param quarters - Counts of each quarter, in order. n = 4 for a year
 * @returns Completeness of each, and whether all four reach 90 % in all three shares. [-]
 * @throws `wind/bad-reading` as `completeness`.
 * @source EPA-454/R-99-005 (2000), section 5.3.2.
 * @check test/published/epa-454-r-99-005/completeness.test.ts
 */
export function yearIsComplete(quarters: readonly Counted[]): {
  readonly complete: boolean;
  readonly quarters: readonly Completeness[];
} {
  const shares = quarters.map(completeness);
  const reaches = ({ speed, heading, both }: Completeness): boolean =>
    Math.min(speed, heading, both) >= QUARTER_COMPLETE;
  return { complete: shares.length === 4 && shares.every(reaches), quarters: shares };
}
