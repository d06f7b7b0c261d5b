import type { Design } from '../../app/api.ts';
import { budgetPicture, buildsPicture, turnPicture } from '../../core/make/index.ts';
import {
  errorBudget,
  exactTurn,
  virtualBuilds,
  type BuildStatistics,
  type ErrorBudget,
  type ReadingErrors,
} from '../../core/proof/index.ts';

/** The part of a proof that follows a slider: no causes, no changes, no rival. */
export interface QuickProof {
  readonly builds: BuildStatistics;
  readonly budget: ErrorBudget;
  readonly errors: ReadingErrors;
  /** Fastest turn at which every position is read. [deg/s] */
  readonly limitDegPerS: number;
  /** SVG, each with its title inside. */
  readonly pictures: { readonly budget: string; readonly builds: string; readonly turn: string };
}

/** Budget and yield alone. */
export function quickProof(
  { instrument: { need }, head }: Design,
  choice: { readonly builds: number; readonly seed: number },
): QuickProof {
  const builds = virtualBuilds(head, { ...choice, accuracyDeg: need.accuracyDeg });
  const budget = errorBudget(head, need.turnRateDegPerS);
  const turn = exactTurn(head);
  return {
    builds,
    budget,
    errors: turn.errors,
    limitDegPerS: head.speed.limitDegPerS,
    pictures: {
      budget: budgetPicture({ budget }).html,
      builds: buildsPicture({ builds }, need).html,
      turn: turnPicture({ exactTurn: turn }, need).html,
    },
  };
}
