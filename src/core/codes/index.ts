export { buildCode, codeProblems } from './buildCode.ts';
export { codeTable, positionCentreDeg, positionsApart, wordAt, type CodeTable } from './codeTable.ts';
export { codeCsv, readCodeCsv } from './exchange/codeCsv.ts';
export { codeJson, readCodeJson } from './exchange/codeJson.ts';
export { nameCode, type CodeName } from './exchange/nameCode.ts';
export { OWN_WORDS } from './exchange/wordList.ts';
export { families, familyNames } from './families/families.ts';
export type { CodeBuild, CodeFamily, CodeOptions, Refusal, SearchReport, Strobe } from './family.ts';
export { POSITIONS_RANGE, type Channel, type CodePlan, type Level, type Track, type Word } from './model.ts';
export {
  boundaries,
  halfTurned,
  type Boundary,
  type HalfTurned,
  type LevelOrder,
} from './properties/boundaries.ts';
export {
  codeProperties,
  lightFaultsSeen,
  type BoundaryProperties,
  type CodeProperties,
  type TrackProperties,
} from './properties/properties.ts';
export { deadChannels, strangerDistance, type DeadChannel } from './properties/faults.ts';
export { greyLevels, type GreyLevels } from './properties/greyLevels.ts';
export { vernierTolerancePeriods } from './families/vernier.ts';
export type { CodeNeed, Reason, Verdict } from './ranking/need.ts';
export { rankCodes, RANKING_SEARCH, type RankedCode } from './ranking/rankCodes.ts';
export { weighCode, type CodeMeasures, type WeighedCode } from './ranking/weighCode.ts';
export { DEFAULT_SEARCH, type SearchLimits } from './search/limits.ts';
export { ROSE_SECTORS, sectorAdvice, type SectorFit } from './properties/sectors.ts';
export { smallestMark, type SmallestMark } from './properties/smallestMark.ts';
export { staggeredCode } from './staggeredCode.ts';
export { levelAt, runAt, runLengthsDeg, trackFromCells } from './track.ts';
