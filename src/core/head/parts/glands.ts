/** A cable gland's thread. [mm] */
export interface Gland {
  readonly title: string;
  /** Hole that the thread goes through. [mm] */
  readonly holeMm: number;
  /** Flat seat under its washer. [mm] */
  readonly seatMm: number;
}

/** Glands by thread. [mm] @source IEC 62444 metric threads; seat sizes from memory. */
export const glands = {
  M12: { title: 'cable gland M12 x 1.5', holeMm: 12.3, seatMm: 20 },
  M16: { title: 'cable gland M16 x 1.5', holeMm: 16.3, seatMm: 25 },
  M20: { title: 'cable gland M20 x 1.5', holeMm: 20.3, seatMm: 29 },
} as const satisfies Record<string, Gland>;

/** Thread of a gland in the table. */
export type GlandName = keyof typeof glands;
