export { fileRawLog, type FileRawLogOptions } from './fileRawLog.ts';
export { copyRawLog, type CopiedLog } from './copyRawLog.ts';
