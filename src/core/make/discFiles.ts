import type { DiscPlan } from '../disc/index.ts';
import { discDxf } from './dxf/discDxf.ts';
import type { MadeFile } from './madeFile.ts';
import { meshStl } from './solids/meshStl.ts';
import { discSolids } from './stl/discSolids.ts';
import { discSvg } from './svg/discSvg.ts';
import { threeMfBytes } from './threeMf/threeMfBytes.ts';

/**
 * Everything that is cut, printed, plotted or etched of a disc: drawings, and solids where it is solid.
 *
 * @param plan - A disc plan.
 * @returns `disc.svg`, `disc.dxf`, an STL for each material and `disc.3mf` with all of them; equal plans, equal bytes.
 * @check test/journeys/discForms.test.ts
 */
export function discFiles(plan: DiscPlan): MadeFile[] {
  const solids = discSolids(plan);
  const [title, bed] = [plan.strip ? 'coded strip' : 'coded disc', plan.spec.diameterMm];
  return [
    { path: 'disc.svg', content: discSvg(plan) },
    { path: 'disc.dxf', content: discDxf(plan) },
    ...solids.map((solid) => ({ path: `${solid.name}.stl`, content: meshStl(solid) })),
    ...(solids.length === 0
      ? []
      : [{ path: 'disc.3mf', content: threeMfBytes(title, [{ name: title, bodies: solids }], bed) }]),
  ];
}
