import type { DiscPlan } from '../disc/index.ts';
import type { HeadPlan } from '../head/index.ts';
import type { Instrument } from '../instrument/index.ts';
import { errorBudget } from './budget/errorBudget.ts';
import { causeNames } from './builds/causeNames.ts';
import { rankedCauses, type BuildMaker } from './builds/causes.ts';
import { loosestFactor } from './builds/tolerances.ts';
import { virtualBuilds } from './builds/virtualBuilds.ts';
import { usefulChanges } from './changes/usefulChanges.ts';
import { finePosition } from './fine/finePosition.ts';
import type { Proof } from './proof.ts';
import { memoryNote, merits, shortfalls } from './reasons.ts';
import { rivalBuilds } from './rival.ts';
import { exactTurn, nightErrors } from './turn/exactTurn.ts';

/** A design and how thoroughly to prove it. */
export interface ProofRequest {
  readonly instrument: Pick<Instrument, 'need'>;
  readonly disc: DiscPlan;
  readonly head: HeadPlan;
  /** Virtual builds. [-], whole, 1..10,000,000 */
  readonly builds: number;
  /** Any whole number from 0; equal seeds give equal proofs. [-] */
  readonly seed: number;
  /** Who makes builds; this thread where left out. */
  readonly make?: BuildMaker;
}

/**
 * Will it read right, and what to tighten first.
 *
 * The verdict is yes when the design as drawn reads within the need, enough virtual builds do, and the shaft's wanted
 * turn rate is below the speed limit.
 *
 * @throws `proof/builds-out-of-range`, `proof/seed-not-whole`, `proof/too-many-channels`
 */
export function prove({ instrument, disc, head, builds, seed, make = virtualBuilds }: ProofRequest): Proof {
  const { need } = instrument;
  const request = { builds, seed, accuracyDeg: need.accuracyDeg };
  const built = make(head, request);
  const turn = exactTurn(head);
  const atNight = nightErrors(head);
  const drawnSquare = (turn.errors.rmsDeg ?? 0) ** 2;
  const causes = rankedCauses(head, request, built, { drawnSquare, wantedYield: need.wantedYield, make });
  const { rival, refusal } = rivalBuilds(disc, head, request, built, make);
  const evidence = { head, need, exactTurn: turn, atNight, builds: built, causes };
  const against = shortfalls(evidence);
  const notes = [memoryNote(head), refusal].filter((note) => note !== null);
  return {
    verdict: against.length > 0 ? 'no' : 'yes',
    reasons: [...(against.length > 0 ? against : merits(evidence)), ...notes],
    exactTurn: turn,
    atTurnRate: exactTurn(head, {}, need.turnRateDegPerS).errors,
    builds: built,
    causes,
    loosestFactor: loosestFactor(head, request, need.wantedYield, causeNames),
    budget: errorBudget(head, need.turnRateDegPerS),
    changes: usefulChanges(head, need, request, built),
    fine: finePosition(head, seed),
    rival,
    warnings: head.warnings,
  };
}
