// The library's front door: the verbs of each step of the job, and what they take and give. A program that needs more of a
// step finds it in src/core; only what stands here is promised to stay.
export { boardNamed, boards, type Board } from './boards/index.ts';
export {
  buildCode,
  codeProperties,
  codeTable,
  families,
  familyNames,
  rankCodes,
  sectorAdvice,
  wordAt,
  type CodeTable,
  type Word,
} from './codes/index.ts';
export { planDisc, type DiscPlan, type DiscSpec } from './disc/index.ts';
export { problemText, VanewrightError, type Problem } from './error/index.ts';
export {
  faultSetting,
  FaultWatch,
  findFaults,
  type FaultSample,
  type FaultSetting,
  type Finding,
} from './faults/index.ts';
export {
  certificateOf,
  fitRecording,
  fittedCups,
  readRecording,
  releaseTest,
  setNorth,
  type Certificate,
  type Fit,
  type Recording,
} from './fit/index.ts';
export { planHead, type HeadPlan } from './head/index.ts';
export { applyAsBuilt, readInstrument, startingFile, type Instrument } from './instrument/index.ts';
export { discDxf, discSvg, makeParts, partNames, type Made, type MadeFile } from './make/index.ts';
export { powerPlan, programFiles, wiringPlan, type PowerPlan } from './program/index.ts';
export { compareDesigns, errorBudget, exactTurn, prove, type Proof } from './proof/index.ts';
export {
  lineCharsAtMost,
  parseLine,
  PLAIN_RULE,
  StreamReader,
  type Line,
  type ParsedLine,
  type Sample,
} from './record/index.ts';
export { RecordSum, reviewOf, type Review } from './review/index.ts';
export { turnBetween, wrapDegrees, type Degrees } from './units/index.ts';
export { purposeAdvice, weighPrinciples, type PurposeAdvice, type Weighing } from './weigh/index.ts';
export {
  circularSpread,
  cupFactor,
  HeadingSum,
  logProfile,
  meanHeading,
  roseOf,
  RoseSum,
  sectorShares,
  slidingGust,
  speedCapOfQuiet,
  vectorMean,
  weibullFit,
  windPeriods,
  type MeanHeading,
  type Rose,
  type VectorMean,
  type WindSample,
} from './wind/index.ts';
