export type { Aperture, CircuitSpec, Detector, HeadSpec, Light } from './headSpec.ts';
export type { ChannelPlan, HeadPlan, Levels, SpeedLimit } from './headPlan.ts';
export { detectorDefaults, ledWavelengthDefaultsNm } from './detectorDefaults.ts';
