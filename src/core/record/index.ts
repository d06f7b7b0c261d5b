export { crc16 } from './crc16.ts';
export { crcText, formatLine } from './formatLine.ts';
export { formatJsonLine, jsonCharsAtMost, parseJsonLine } from './jsonLine.ts';
export {
  COUNTER_MOST,
  GUST_MOST,
  LINE_TAG,
  lineCharsAtMost,
  lineFields,
  lineFlags,
  NONE,
  NOT_READ,
  type Line,
  type LineAverage,
  type LineCups,
  type LineField,
  type LineFlag,
} from './line.ts';
export { formatPack, parsePack, type PackHead, type PackRecord, type ParsedPack } from './pack.ts';
export { parseLine, type ParsedLine } from './parseLine.ts';
export { parseSentence, type ParsedSentence } from './parseSentence.ts';
export { formatSentence, sentenceCheck, type WindSentence } from './sentence.ts';
export {
  formatStatus,
  parseStatus,
  STATUS_TAG,
  startReasons,
  statusCharsAtMost,
  statusFields,
  type ParsedStatus,
  type StartReason,
  type StatusLine,
} from './statusLine.ts';
