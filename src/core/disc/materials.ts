import type { DiscSpec, Process } from './discSpec.ts';

/** What a process's usual material weighs and bears. */
export interface Material {
  readonly name: string;
  readonly densityKgPerM3: number;
  /** Bending stress at which it breaks. [MPa] */
  readonly flexuralMpa: number;
}

/**
 * Usual material of each process.
 *
 * @source values from memory of data sheets, rounded to the weak side; PLA 1240 kg/m³ as most filament makers print it.
 */
export const materials: Readonly<Record<Process['kind'], Material>> = {
  fdm: { name: 'PLA', densityKgPerM3: 1240, flexuralMpa: 50 },
  laser: { name: 'acrylic sheet', densityKgPerM3: 1190, flexuralMpa: 90 },
  film: { name: 'polyester film', densityKgPerM3: 1390, flexuralMpa: 90 },
  'colour-print': { name: 'card', densityKgPerM3: 800, flexuralMpa: 20 },
  pcb: { name: 'glass-fibre board (FR4)', densityKgPerM3: 1850, flexuralMpa: 350 },
};

/** Density of a disc's material, as the maker gives it or as is usual. [kg/m³] */
export function densityOf({ densityKgPerM3, process }: Pick<DiscSpec, 'densityKgPerM3' | 'process'>): number {
  return densityKgPerM3 ?? materials[process.kind].densityKgPerM3;
}
