import { VanewrightError, type Problem } from '../../error/index.ts';
import type { HeadPlan } from '../../head/index.ts';
import type { PartsSpec } from '../../instrument/index.ts';
import type { PrintSetting } from '../solids/print.ts';
import { chosenBodies, widestFootprint, type ChosenBodies } from './chosenBodies.ts';
import { headProblems } from './headChecks.ts';
import { alongProblems, headAcross } from './stripHead.ts';
import { holderPlan, type HolderPlan } from './holderPlan.ts';

/** Everything the parts of one head are made from. */
export interface HeadBuild {
  readonly head: HeadPlan;
  readonly plan: HolderPlan;
  readonly bodies: ChosenBodies;
  readonly print: PrintSetting;
  readonly choices: PartsSpec;
}

/** Where everything of a head goes, or every problem that keeps it from being made. */
export type HeadBuildOrProblems =
  | { readonly build: HeadBuild; readonly problems: readonly [] }
  | { readonly build: null; readonly problems: readonly Problem[] };

/**
 * Where everything of a head goes, checked before anything is made.
 *
 * @param head - Channels in their places.
 * @returns The build, or `make/part-unfit`, or `make/strip-head-along`, or together all of `make/parts-too-close`, `make/aperture-too-fine`,
 * `make/slot-too-shallow`, `make/slot-too-narrow`, `make/head-meets-shaft` and `make/no-bearing` that hold.
 */
export function headBuild(head: HeadPlan, print: PrintSetting, choices: PartsSpec): HeadBuildOrProblems {
  try {
    const bodies = chosenBodies(choices);
    const along = alongProblems(head);
    if (along.length > 0) return { build: null, problems: along };
    const across = headAcross(head);
    const plan = holderPlan(across, widestFootprint(bodies));
    const problems = headProblems(across, plan, bodies, print);
    if (problems.length > 0) return { build: null, problems };
    return { build: { head: across, plan, bodies, print, choices }, problems: [] };
  } catch (error) {
    if (error instanceof VanewrightError) return { build: null, problems: error.problems };
    throw error;
  }
}
