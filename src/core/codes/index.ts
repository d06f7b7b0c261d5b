export { boundaries, halfTurned, type Boundary, type HalfTurned, type LevelOrder } from './boundaries.ts';
export { codeTable, positionCentreDeg, wordAt, type CodeTable } from './codeTable.ts';
export { buildCode, families, familyNames, POSITIONS_RANGE } from './families.ts';
export type { CodeFamily } from './family.ts';
export type { Channel, CodePlan, Level, Track, Word } from './model.ts';
export {
  codeProperties,
  lightFaultsSeen,
  type BoundaryProperties,
  type CodeProperties,
  type TrackProperties,
} from './properties.ts';
export { levelAt, runAt, runLengthsDeg, trackFromCells } from './track.ts';
