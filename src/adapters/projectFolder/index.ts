export { nodeProjectFolder } from './nodeProjectFolder.ts';
