export { causeNames, type CauseName } from './builds/causeNames.ts';
export { virtualBuilds, type BuildRequest } from './builds/virtualBuilds.ts';
export { wilsonShare } from './builds/wilson.ts';
export { buildsToSettle, isSettled } from './enoughBuilds.ts';
export type { BuildStatistics, Cause, ExactTurn, Proof, ReadingErrors, ReadStretch, Share } from './proof.ts';
export { prove, type ProofRequest } from './prove.ts';
export type { BuildFaults } from './turn/conditions.ts';
export { exactTurn } from './turn/exactTurn.ts';
export { worthwhileCauses } from './worthwhile.ts';
