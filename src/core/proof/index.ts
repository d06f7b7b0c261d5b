export { exactTurn } from './turn/exactTurn.ts';
export type { BuildStatistics, Cause, ExactTurn, Proof, ReadingErrors, ReadStretch, Share } from './proof.ts';
