export { crc16 } from './crc16.ts';
export { formatLine } from './formatLine.ts';
export {
  COUNTER_MOST,
  LINE_TAG,
  lineCharsAtMost,
  lineFields,
  lineFlags,
  NONE,
  NOT_READ,
  type Line,
  type LineField,
  type LineFlag,
} from './line.ts';
export { parseLine, type ParsedLine } from './parseLine.ts';
