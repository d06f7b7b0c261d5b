export { FaultWatch, findFaults } from './faultWatch.ts';
export { faultKinds, type FaultKind, type Finding, type Spoils } from './finding.ts';
export { eachSample, faultColumnsOf, type FaultColumns } from './readings/faultColumns.ts';
export type { FaultSample } from './readings/seen.ts';
export { faultSetting, type ChannelLight, type FaultSetting } from './setting.ts';
export type { Candidate } from './prints/candidates.ts';
export { MonthPrints, type MonthPrint } from './prints/monthPrints.ts';
export { rankCauses, type RankedCause } from './prints/rankCauses.ts';
export { WordSteps } from './prints/wordSteps.ts';
