/** A ball bearing for a shaft. [mm] */
export interface Bearing {
  readonly shaftMm: number;
  readonly outerMm: number;
  readonly widthMm: number;
}

/** Common small deep-groove ball bearings. [mm] @source ISO 15 boundary dimensions, values from memory. */
export const bearings: readonly Bearing[] = [
  { shaftMm: 3, outerMm: 10, widthMm: 4 },
  { shaftMm: 4, outerMm: 13, widthMm: 5 },
  { shaftMm: 5, outerMm: 16, widthMm: 5 },
  { shaftMm: 6, outerMm: 19, widthMm: 6 },
  { shaftMm: 8, outerMm: 22, widthMm: 7 },
  { shaftMm: 10, outerMm: 26, widthMm: 8 },
  { shaftMm: 12, outerMm: 28, widthMm: 8 },
  { shaftMm: 15, outerMm: 32, widthMm: 9 },
  { shaftMm: 20, outerMm: 42, widthMm: 12 },
];

/** The bearing for a shaft, or `null` where the table has none of that bore. @param shaftMm - Diameter. [mm] */
export function bearingFor(shaftMm: number): Bearing | null {
  return bearings.find((bearing) => bearing.shaftMm === shaftMm) ?? null;
}

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
