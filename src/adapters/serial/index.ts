export { serialSource, type SerialOptions } from './serialSource.ts';
