import type { DiscPlan } from '../../disc/index.ts';
import { meshStl } from '../solids/meshStl.ts';
import { discSolids } from './discSolids.ts';

/**
 * The disc as a solid in binary STL, in millimetres: axis at the origin, patterned face up.
 *
 * @param plan - A disc plan of one material.
 * @returns The whole file, equal plans giving equal bytes; `null` for a print, a board, or a disc of several materials.
 * @check test/journeys/discFilesSolid.test.ts (admesh calls it watertight, volume is area times thickness)
 */
export function discStl(plan: DiscPlan): Uint8Array | null {
  const [first, ...others] = discSolids(plan);
  return first && others.length === 0 ? meshStl(first) : null;
}
