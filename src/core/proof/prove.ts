import type { DiscPlan } from '../disc/index.ts';
import type { HeadPlan } from '../head/index.ts';
import type { Instrument } from '../instrument/index.ts';
import { rankedCauses } from './builds/causes.ts';
import { virtualBuilds } from './builds/virtualBuilds.ts';
import type { Proof } from './proof.ts';
import { memoryNote, merits, shortfalls } from './reasons.ts';
import { rivalBuilds } from './rival.ts';
import { exactTurn } from './turn/exactTurn.ts';

/** A design and how thoroughly to prove it. */
export interface ProofRequest {
  readonly instrument: Pick<Instrument, 'need'>;
  readonly disc: DiscPlan;
  readonly head: HeadPlan;
  /** Virtual builds. [-], whole, 1..10,000,000 */
  readonly builds: number;
  /** Any whole number from 0; equal seeds give equal proofs. [-] */
  readonly seed: number;
}

/**
 * Will it read right, and what to tighten first.
 *
 * The verdict is yes when the design as drawn reads within the need, enough virtual builds do, and the shaft's wanted
 * turn rate is below the speed limit.
 *
 * @throws `proof/builds-out-of-range`, `proof/seed-not-whole`, `proof/too-many-channels`
 */
export function prove({ instrument, disc, head, builds, seed }: ProofRequest): Proof {
  const { need } = instrument;
  const request = { builds, seed, accuracyDeg: need.accuracyDeg };
  const built = virtualBuilds(head, request);
  const turn = exactTurn(head);
  const causes = rankedCauses(head, request, built);
  const { rival, refusal } = rivalBuilds(disc, head, request, built);
  const evidence = { head, need, exactTurn: turn, builds: built, causes };
  const against = shortfalls(evidence);
  const notes = [memoryNote(head), refusal].filter((note) => note !== null);
  return {
    verdict: against.length > 0 ? 'no' : 'yes',
    reasons: [...(against.length > 0 ? against : merits(evidence)), ...notes],
    exactTurn: turn,
    builds: built,
    causes,
    rival,
    warnings: head.warnings,
  };
}
