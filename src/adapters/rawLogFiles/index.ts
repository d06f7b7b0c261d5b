export { fileRawLog, type FileRawLogOptions } from './fileRawLog.ts';
