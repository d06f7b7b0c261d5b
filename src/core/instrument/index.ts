export { headingOfDiscAngle, headingOfPosition, type HeadingFrame } from './heading.ts';
export type { ControllerSpec, CupsSpec, Instrument, Need, SiteSpec } from './instrument.ts';
