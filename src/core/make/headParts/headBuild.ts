import type { HeadPlan } from '../../head/index.ts';
import type { PartsSpec } from '../../instrument/index.ts';
import type { PrintSetting } from '../solids/print.ts';
import type { ChosenBodies } from './chosenBodies.ts';
import type { HolderPlan } from './holderPlan.ts';

/** Everything the parts of one head are made from. */
export interface HeadBuild {
  readonly head: HeadPlan;
  readonly plan: HolderPlan;
  readonly bodies: ChosenBodies;
  readonly print: PrintSetting;
  readonly choices: PartsSpec;
}
