export type { Bore, DiscSpec, Process, RingSector } from './discSpec.ts';
export type { DiscPlan, TrackPlan } from './discPlan.ts';
export type { Pen, Point } from './pen.ts';
export { processDefaults, thicknessDefaultsMm } from './processDefaults.ts';
