export type { BuildStatistics, Cause, ExactTurn, Proof, ReadingErrors, ReadStretch, Share } from './proof.ts';
