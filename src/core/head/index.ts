export { detectorDefaults, ledWavelengthDefaultsNm } from './detectorDefaults.ts';
export { edgeSpread, spreadAcross, type EdgeSpread } from './edgeSpread.ts';
export type { Aperture, CircuitInput, CircuitSpec, Detector, HeadSpec, Light } from './headSpec.ts';
export type { ChannelPlan, HeadPlan, Levels, Rate, SpeedLimit } from './headPlan.ts';
export { lagMs } from './lag.ts';
export { lightLevel } from './lightLevel.ts';
export { planHead } from './planHead.ts';
export { bestResistorOhm, nearestE24, recommendedResistorOhm } from './resistor.ts';
export { seenTrack, type SeenTrack } from './seenTrack.ts';
export { signalOf, type Signal } from './signal.ts';
export { loopMs, readsEach, readUs, settleUs } from './readLoop.ts';
export { narrowestStepDeg, speedLimitDegPerS } from './speedLimit.ts';
export {
  conversionSigmaCounts,
  hysteresisCounts,
  switchLights,
  thresholdsBetween,
  type SwitchLights,
  type Thresholds,
} from './thresholds.ts';
