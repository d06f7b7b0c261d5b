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
export { Ledger, ledgerCounts, shownLine, type LedgerRow } from './ledger/ledger.ts';
export { ledgerReasons, type LedgerAction, type LedgerReason } from './ledger/ledgerReasons.ts';
export { LINE_BYTES_MOST, LineSplitter, type ByteLine } from './mess/byteLines.ts';
export { lineText, withoutMonitorTime } from './mess/lineText.ts';
export { frameOf, scanFrames, type Damage, type ScannedFrames } from './rawLog/frame.ts';
export { PAYLOAD_MOST, type NewRawEntry, type RawEntry, type RawKind } from './rawLog/rawEntry.ts';
export { PLAIN_RULE, readingRuleOf, type LogSpeedUnit, type ReadingRule } from './samples/readingRule.ts';
export {
  beginPayload,
  NOTHING_RECORDED,
  RecordReader,
  type RecordState,
  type StreamBegin,
} from './samples/recordReader.ts';
export { csvText10Min, type MeansOfPeriod } from './samples/meanColumns.ts';
export { sampleFlagNames, sampleFlags, sampleWith, type Sample, type SampleFlag } from './samples/sample.ts';
export { stationName } from './samples/stationName.ts';
export { StreamReader } from './samples/streamReader.ts';
export { isSetClock } from './time/arrivalClock.ts';
export {
  placedInstant,
  placeSegments,
  type Moment,
  type Placement,
  type SegmentSpan,
} from './time/placeSegments.ts';
export { ZoneClock, type ZonedInstant } from './time/zoneClock.ts';
export {
  allFollow,
  MOVED_LOG,
  movedRow,
  requireStorable,
  sifted,
  type KnownSample,
  type Sifted,
} from './samples/clash.ts';
export type { DateOrder } from './time/dateText.ts';
export {
  archiveColumns,
  archiveDescriptor,
  csvField,
  csvHeading,
  csvText,
  ledgerCsv,
  type ArchiveColumn,
  type ArchivedFile,
} from './samples/archiveColumns.ts';
export { messageNumbers, type FeedMessage } from './feed/feedMessage.ts';
export { NO_FEED, readFeed, rereadFeed, type FeedReading, type FeedState } from './feed/feedReader.ts';
