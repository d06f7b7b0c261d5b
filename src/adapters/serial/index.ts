export { serialPorts } from './serialPorts.ts';
export { serialSource, type SerialOptions } from './serialSource.ts';
