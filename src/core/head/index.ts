export type { Aperture, CircuitSpec, Detector, HeadSpec, Light } from './headSpec.ts';
export type { ChannelPlan, HeadPlan, Levels, SpeedLimit } from './headPlan.ts';
