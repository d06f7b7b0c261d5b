import { BrokenPromise } from '../../../error/index.ts';
import { madePart, type MadePart } from '../../solids/madePart.ts';
import type { ShapeKit } from '../../solids/shapeKit.ts';
import type { HeadBuild } from '../headBuild.ts';
import { glands } from '../../../head/index.ts';
import { bearingFor } from './fittings.ts';
import { housingBase } from './housingBase.ts';
import { housingLid, rainCap } from './housingLid.ts';
import { housingPlan } from './housingPlan.ts';

/**
 * The two halves of the housing, and the cap over its bearing.
 *
 * @param stackMm - Height of what stands inside. [mm]
 */
export function housingParts(kit: ShapeKit, build: HeadBuild, stackMm: number): MadePart[] {
  const { head, plan, print, choices } = build;
  const { bore } = head.disc.spec;
  const bearing = bearingFor(bore.diameterMm);
  if (!bearing) throw new BrokenPromise('A shaft without a bearing passed its checks.');
  const housing = housingPlan(plan, stackMm, { bearing, gland: choices.gland });
  const bearingText = `ball bearing ${bearing.shaftMm} x ${bearing.outerMm} x ${bearing.widthMm} mm`;
  return [
    madePart(housingBase(kit, housing, plan, print), print, {
      name: 'housing-base',
      sizes: [
        { name: 'inside across', mm: 2 * housing.innerRadiusMm },
        { name: 'inside height', mm: housing.insideMm },
        { name: 'hole for the gland', mm: glands[choices.gland].holeMm },
      ],
      notes: [
        `Takes one ${bearingText} and one ${glands[choices.gland].title}, which looks down.`,
        'Keep the roofed drain hole open and lowest. Seal the three bracket screws.',
      ],
    }),
    madePart(housingLid(kit, housing, print), print, {
      name: 'housing-lid',
      sizes: [{ name: 'outside across', mm: 2 * housing.outerRadiusMm }],
      notes: [
        `Takes one ${bearingText}. Its two skirts take the wall of the base between them; three M3 screws.`,
      ],
    }),
    madePart(rainCap(kit, housing, bore, print), print, {
      name: 'rain-cap',
      sizes: [{ name: 'shaft', mm: bore.diameterMm }],
      notes: ['Turns with the shaft, open side down, 1 mm above the lid; one M3 set screw.'],
    }),
  ];
}
