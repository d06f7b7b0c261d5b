export { detectorDefaults, ledWavelengthDefaultsNm } from './detectorDefaults.ts';
export { edgeSpread, spreadAcross, type EdgeSpread } from './light/edgeSpread.ts';
export type { Aperture, CircuitInput, CircuitSpec, Detector, HeadSpec, Light } from './headSpec.ts';
export type { ChannelPlan, HeadPlan, Levels, Rate, SpeedLimit } from './headPlan.ts';
export { LEAST_TURN_RATE_DEG_PER_S } from './headPlan.ts';
export { lagMs } from './circuit/lag.ts';
export { lightLevel } from './light/lightLevel.ts';
export { planHead } from './planHead.ts';
export { bestResistorOhm, nearestE24, recommendedResistorOhm } from './circuit/resistor.ts';
export { seenTrack, type SeenTrack } from './light/seenTrack.ts';
export { signalOf, type Signal } from './circuit/signal.ts';
export { loopMs, readsEach, readUs, settleUs } from './circuit/readLoop.ts';
export { narrowestStepDeg, speedLimitDegPerS } from './circuit/speedLimit.ts';
export {
  conversionSigmaCounts,
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
