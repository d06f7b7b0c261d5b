export { detectorDefaults, ledWavelengthDefaultsNm } from './detectorDefaults.ts';
export { edgeSpread, penumbraMm, spreadAcross, type EdgeSpread } from './light/edgeSpread.ts';
export type {
  Aperture,
  CircuitInput,
  CircuitSpec,
  Climate,
  Detector,
  HeadSpec,
  Leak,
  Light,
  Penumbra,
  Rgb,
} from './headSpec.ts';
export type { ChannelPlan, HeadPlan, Levels, Rate, SpeedLimit } from './headPlan.ts';
export { LEAST_TURN_RATE_DEG_PER_S } from './headPlan.ts';
export { CLIMATE_DEFAULT, kelvinRange } from './circuit/climate.ts';
export { feedbackOhm, gateOf, GATE_OHM, hasGates } from './circuit/gates.ts';
export {
  LADDER_CHANNELS_MOST,
  LADDER_DEFAULT,
  ladderPlan,
  ladderReadsAs,
  type LadderPlan,
} from './circuit/ladder.ts';
export { lagMs } from './circuit/lag.ts';
export { lightLevel } from './light/lightLevel.ts';
export { planHead } from './planHead.ts';
export { bestResistorOhm, nearestE24, recommendedResistorOhm } from './circuit/resistor.ts';
export { neighboursOf, SPILL_UNSEEN, type Neighbour } from './light/neighbours.ts';
export {
  seenAsDrawn,
  seenNeighbours,
  seenTrack,
  type SeenNeighbour,
  type SeenTrack,
  type Spill,
} from './light/seenTrack.ts';
export { ribMargin } from './light/ribMargin.ts';
export { detectorBehind, leakShare } from './light/background.ts';
export { chromaticityOf, colourReader, nearestColour, type ColourRule } from './marks/colourReader.ts';
export {
  markPlan,
  markReaderOf,
  NOMINAL_MARKS,
  tellsThreeMarks,
  type MarkPlan,
  type MarkVariation,
} from './marks/markPlan.ts';
export type { MarkChange, MarkReader } from './marks/markReader.ts';
export { markShares, seenMarks, type SeenMarks } from './marks/seenMarks.ts';
export { gatheredInputs, INPUTS_MOST } from './circuit/gatheredInputs.ts';
export { signalOf, type Signal } from './circuit/signal.ts';
export { loopMs, readsEach, readUs, settleUs } from './circuit/readLoop.ts';
export { narrowestStepDeg, speedLimitDegPerS } from './circuit/speedLimit.ts';
export {
  thresholdSigmaCounts,
  hysteresisCounts,
  switchLights,
  thresholdsBetween,
  type SwitchLights,
  type Thresholds,
} from './circuit/thresholds.ts';
export { glands, type Gland, type GlandName } from './parts/glands.ts';
export {
  laserTube,
  lightPartDefaults,
  partBodies,
  partBodyNames,
  sensorPartDefaults,
  type FacingBody,
  type Footprint,
  type PartName,
  type ReflectanceBody,
  type SlotBody,
} from './parts/partBodies.ts';
