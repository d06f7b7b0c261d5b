import { balanceOf, materials, type DiscPlan } from '../../disc/index.ts';
import { csvText } from '../../report/index.ts';
import { showNumber } from '../../units/index.ts';
import { meshVolumeMm3 } from '../solids/meshFacts.ts';
import type { Solid } from '../solids/solid.ts';

/** One part that is made, with what it weighs. */
export interface MassRow {
  readonly quantity: number;
  readonly part: string;
  readonly massG: number;
  readonly material: string;
}

/**
 * What the parts weigh that are made rather than bought.
 *
 * @param plan - The disc.
 * @param others - Printed parts, as solid as they are drawn.
 * @returns Rows in order, equal parts counted together. [g]
 * @check src/core/make/bundle/bundle.test.ts
 */
export function massRows(plan: DiscPlan, others: readonly Solid[]): MassRow[] {
  const disc: MassRow = {
    quantity: 1,
    part: plan.strip ? 'coded strip' : 'coded disc',
    massG: balanceOf(plan).massG,
    material: materials[plan.spec.process.kind].name,
  };
  const { name: material, densityKgPerM3 } = materials.fdm;
  const rows = new Map<string, MassRow>();
  for (const { name, mesh } of others) {
    const known = rows.get(name);
    const massG = meshVolumeMm3(mesh) * densityKgPerM3 * 1e-6;
    rows.set(
      name,
      known ? { ...known, quantity: known.quantity + 1 } : { quantity: 1, part: name, massG, material },
    );
  }
  return [disc, ...rows.values()];
}

/** The rows as a table of a spreadsheet. */
export function massCsv(rows: readonly MassRow[]): string {
  return csvText(
    ['quantity', 'part', 'mass of each, g', 'material'],
    rows.map(({ quantity, part, massG, material }) => [
      String(quantity),
      part,
      showNumber(massG, 2),
      material,
    ]),
  );
}
