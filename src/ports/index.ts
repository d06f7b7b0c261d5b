export type { StopSign } from './stop.ts';
export type { InstrumentFiles } from './instrumentFiles.ts';
export type { OutputFile, OutputFolder, Written } from './outputFolder.ts';
