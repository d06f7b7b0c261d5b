import type { CodeFamily } from '../family.ts';
import { balancedGray } from './balancedGray.ts';
import { countingWheel } from './countingWheel.ts';
import { longRunGray } from './longRunGray.ts';
import { naturalBinary } from './naturalBinary.ts';
import { reflectedGray } from './reflectedGray.ts';
import { shiftRegister } from './shiftRegister.ts';
import { singleTrackGray } from './singleTrackGray.ts';
import { switchRing } from './switchRing.ts';
import { ternaryModular } from './ternaryModular.ts';
import { ternaryReflected } from './ternaryReflected.ts';
import { vernier } from './vernier.ts';

/** Every code a disc can carry, in the order a maker should read them. */
export const families = [
  reflectedGray,
  longRunGray,
  balancedGray,
  singleTrackGray,
  shiftRegister,
  vernier,
  ternaryModular,
  ternaryReflected,
  switchRing,
  countingWheel,
  naturalBinary,
] as const satisfies readonly CodeFamily[];

/** Names that `disc.code` accepts. */
export const familyNames: readonly string[] = families.map((family) => family.name);
