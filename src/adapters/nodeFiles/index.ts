export { nodeInstrumentFiles } from './nodeInstrumentFiles.ts';
export { nodeOutputFolder } from './nodeOutputFolder.ts';
