import type { CodeFamily } from '../family.ts';
import { balancedGray } from './balancedGray.ts';
import { longRunGray } from './longRunGray.ts';
import { naturalBinary } from './naturalBinary.ts';
import { reflectedGray } from './reflectedGray.ts';
import { singleTrackGray } from './singleTrackGray.ts';

/** Every code a disc can carry, in the order a maker should read them. */
export const families = [
  reflectedGray,
  longRunGray,
  balancedGray,
  singleTrackGray,
  naturalBinary,
] as const satisfies readonly CodeFamily[];

/** Names that `disc.code` accepts. */
export const familyNames: readonly string[] = families.map((family) => family.name);
