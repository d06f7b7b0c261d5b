import { VanewrightError } from '../../error/index.ts';

/**
 * How far a search may go. It is counted in steps of the search and not in time, so that the same request gives
 * the same disc on every machine.
 */
export interface SearchLimits {
  /** Where the draws begin; equal seeds give equal codes. */
  readonly seed: number;
  /** Words tried before the search gives up. [-] */
  readonly mostSteps: number;
  /** Set to end the search; looked at every few thousand steps. */
  readonly signal?: { readonly aborted: boolean };
  /** Told now and then how many steps are done, of how many. */
  readonly progress?: (stepsDone: number, mostSteps: number) => void;
}

/** About a second of search on a small machine. */
export const DEFAULT_SEARCH: SearchLimits = { seed: 1, mostSteps: 4_000_000 };

/** Steps between two looks at the signal. */
const LOOK_EVERY = 4096;

/** Counts the steps of one search against its limits; a part of a search counts for the whole too. */
export class StepCounter {
  readonly limits: SearchLimits;
  done = 0;
  private readonly most: number;
  private readonly whole: StepCounter | null;

  constructor(limits: SearchLimits, whole: StepCounter | null = null, most: number = limits.mostSteps) {
    this.limits = limits;
    this.whole = whole;
    this.most = most;
  }

  /** Steps left. [-] */
  get left(): number {
    return Math.min(this.most - this.done, this.whole?.left ?? Infinity);
  }

  /** A counter for a part of the search that may take so many of the steps left. */
  part(mostSteps: number): StepCounter {
    return new StepCounter(this.limits, this, mostSteps);
  }

  /**
   * Counts one step.
   *
   * @throws `codes/search-cancelled` when the signal is set.
   */
  step(): void {
    this.done += 1;
    if (this.whole) return this.whole.step();
    if (this.done % LOOK_EVERY !== 0) return;
    this.limits.progress?.(this.done, this.limits.mostSteps);
    if (!this.limits.signal?.aborted) return;
    throw new VanewrightError({
      code: 'codes/search-cancelled',
      what: 'The search for a code was stopped before it found one.',
      where: 'disc.code',
      got: `stopped after ${this.done} steps`,
      allowed: `up to ${this.limits.mostSteps} steps`,
      fix: 'Start again and let it run, or take reflected-gray, which needs no search.',
    });
  }
}
