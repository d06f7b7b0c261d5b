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
