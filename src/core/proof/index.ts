export { presentCauses } from './builds/draws.ts';
export { headOfShared, sharedDesign, type SharedDesign } from './builds/sharedDesign.ts';
export { causeNames, type CauseName } from './builds/causeNames.ts';
export type { BuildMaker } from './builds/causes.ts';
export { addTally, emptyTally, type BuildTally } from './builds/tally.ts';
export { loosestFactor } from './builds/tolerances.ts';
export {
  batchCount,
  buildBatch,
  buildStatistics,
  virtualBuilds,
  type BuildRequest,
} from './builds/virtualBuilds.ts';
export {
  budgetItemNames,
  type BudgetItem,
  type BudgetItemName,
  type ErrorBudget,
} from './budget/budgetItem.ts';
export { correctedDisc } from './budget/edgeCorrection.ts';
export { errorBudget } from './budget/errorBudget.ts';
export { usefulChanges } from './changes/usefulChanges.ts';
export { compareDesigns, type Comparison } from './compare.ts';
export { finePosition, type FineDesign, type FinePosition } from './fine/finePosition.ts';
export type { FineErrors } from './fine/fineReading.ts';
export { wilsonShare } from './builds/wilson.ts';
export { buildsToSettle, isSettled } from './enoughBuilds.ts';
export type {
  BuildStatistics,
  Cause,
  ExactTurn,
  Proof,
  ReadingErrors,
  ReadStretch,
  Share,
  UsefulChange,
} from './proof.ts';
export { prove, type ProofRequest } from './prove.ts';
export type { BuildFaults } from './turn/conditions.ts';
export { exactTurn } from './turn/exactTurn.ts';
export { liveTurn, type LiveFaults, type LiveTurn } from './live/liveTurn.ts';
export type { LiveChannel } from './live/liveChannel.ts';
export { worthwhileCauses } from './worthwhile.ts';
