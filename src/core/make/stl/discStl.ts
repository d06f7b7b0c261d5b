import { materialGrid, type DiscPlan } from '../../disc/index.ts';
import { faceMesh } from './faceMesh.ts';
import { stlBytes } from './stlBytes.ts';

/**
 * The disc as a solid in binary STL, in millimetres: axis at the origin, patterned face up.
 *
 * Meshed ring by ring on shared vertices, so that it is watertight by construction; arcs are followed to 0.01 mm.
 *
 * @param plan - A disc plan.
 * @returns The whole file, equal plans giving equal bytes; `null` for film, whose print has no thickness.
 * @check test/journeys/discFilesSolid.test.ts (admesh calls it watertight, volume is area times thickness)
 */
export function discStl(plan: DiscPlan): Uint8Array | null {
  if (plan.spec.process.kind === 'film') return null;
  return stlBytes(
    faceMesh(materialGrid(plan), plan.spec.bore),
    plan.spec.thicknessMm,
    'vanewright disc, millimetres',
  );
}
