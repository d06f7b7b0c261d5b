import type { Problem } from '../error/index.ts';
import type { CodePlan } from './model.ts';

/** One way to mark a disc. Adding a code is adding one file with one of these, and its row in families.ts. */
export interface CodeFamily {
  /** Name in the instrument file, as the trade says it. */
  readonly name: string;
  /** Name in a sentence. */
  readonly title: string;
  /** Why this family cannot make that many positions, or `null` when it can. */
  refusal(positions: number): Pick<Problem, 'code' | 'what' | 'allowed' | 'fix'> | null;
  /** Tracks and channels for a count that is not refused. */
  build(positions: number): CodePlan;
}
