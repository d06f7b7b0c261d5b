export { loggerRecord } from './loggerRecord.ts';
export { loggerEvents } from './loggerEvents.ts';
