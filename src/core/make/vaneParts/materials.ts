/** Density of what prints are made of. [kg/m³] @source polylactide 1240, polyester 1270: makers' sheets, from memory. */
export const PLASTIC_KG_PER_M3 = 1250;

/** Density of steel. [kg/m³] @source common practice, no source. */
export const STEEL_KG_PER_M3 = 7850;

/** A rod or tube that arms are cut from. */
export interface Rod {
  readonly title: string;
  readonly diameterMm: number;
  /** Mass of each metre. [kg/m] */
  readonly kgPerM: number;
}

/** Mass of a metre of tube. [kg/m] @param outerMm - [mm] @param innerMm - 0 for a rod. [mm] @param density - [kg/m³] */
export function tubeKgPerM(outerMm: number, innerMm: number, density: number): number {
  return (Math.PI / 4) * (outerMm ** 2 - innerMm ** 2) * 1e-6 * density;
}

/** Arm of a vane. @source carbon tube 1600 kg/m³, value from memory. */
export const VANE_ARM: Rod = {
  title: 'carbon tube 6 x 4 mm',
  diameterMm: 6,
  kgPerM: tubeKgPerM(6, 4, 1600),
};

/** Arm of a cup. @source carbon rod 1600 kg/m³, value from memory. */
export const CUP_ARM: Rod = { title: 'carbon rod 3 mm', diameterMm: 3, kgPerM: tubeKgPerM(3, 0, 1600) };

/** Steel bars that a counterweight is cut from, thinnest first. [mm] */
export const STEEL_BARS_MM = [8, 10, 12, 16, 20, 25] as const;
