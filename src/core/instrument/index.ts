export type { ControllerSpec, CupsSpec, Instrument, Need, SiteSpec } from './instrument.ts';
