import type { BuildRequest, BuildTally, SharedDesign } from '../core/proof/index.ts';

/** One batch of virtual builds of one design. */
export interface BuildTask {
  readonly design: SharedDesign;
  readonly request: BuildRequest;
  readonly batch: number;
}

/**
 * Hands that make virtual builds beside each other.
 *
 * Promises: a task gives the tally that `buildBatch` gives, whoever makes it and in whatever order; `close` ends them.
 */
export interface BuildWorkers {
  tally(task: BuildTask): Promise<BuildTally>;
  close(): Promise<void>;
}
