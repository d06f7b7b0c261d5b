import type { Problem } from '../../error/index.ts';

/** What stops the work and what a maker should only know. */
export interface Findings {
  readonly problems: readonly Problem[];
  readonly warnings: readonly Problem[];
}
