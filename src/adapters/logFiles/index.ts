export { logFileSource, type LogFileOptions } from './logFileSource.ts';
export { machineClock } from './machineClock.ts';
export { standardInput } from './standardInput.ts';
