export type { ArchiveFigures, ArchiveFolder } from './archiveFolder.ts';
export type { Fonts } from './fonts.ts';
export type { StopSign } from './stop.ts';
export type { InstrumentFiles } from './instrumentFiles.ts';
export type { OutputFile, OutputFolder, Written } from './outputFolder.ts';
export type { Clock } from './clock.ts';
export type { LineSource, SourceBytes } from './lineSource.ts';
export type { RawDamage, RawLog } from './rawLog.ts';
export type {
  RecordReading,
  SampleStore,
  SampleWindow,
  StationSpan,
  StoreBatch,
  StoredLedgerRow,
  StoreProgress,
} from './sampleStore.ts';
export type { BuildTask, BuildWorkers } from './buildWorkers.ts';
export type { ClaimedFeed, FeedRead, SharedFeeds, TakenMessage } from './sharedFeeds.ts';
export type { SerialPortName, SerialPorts } from './serialPorts.ts';
export type { ListedFile, ProjectFile, ProjectFolder } from './projectFolder.ts';
export type { Alert, AlertChannel } from './alertChannel.ts';
