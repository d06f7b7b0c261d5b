import { degToRad } from '../../units/index.ts';
import type { DiscPlan } from '../discPlan.ts';
import type { RingSector } from '../discSpec.ts';

/**
 * What a rib would cost on a disc: only which of two costs more is asked, never how much.
 *
 * Told by whoever knows the light, since a disc knows none. Asked once for each round of ribs, with those of the
 * rounds before in the plan.
 */
export type RibCost = (plan: DiscPlan) => (rib: RingSector) => number;

/** Material of a rib, for a disc that nobody has said anything about the light of. [mm] */
export const ribLength: RibCost =
  () =>
  ({ fromDeg, toDeg, innerRadiusMm, outerRadiusMm }) =>
    degToRad(toDeg - fromDeg) * ((innerRadiusMm + outerRadiusMm) / 2);
