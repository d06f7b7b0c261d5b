export { nodeFonts } from './nodeFonts.ts';
export { nodeInstrumentFiles } from './nodeInstrumentFiles.ts';
export { nodeOutputFolder } from './nodeOutputFolder.ts';
