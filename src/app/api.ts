// The verbs that the command line, the server and the screen share.
export {
  adviseCodes,
  compareInstruments,
  DEFAULT_BUILDS,
  DEFAULT_SEED,
  proveInstrument,
  type CodeAdvice,
  type ComparedDesigns,
  type ProvedDesign,
  type ProveRequest,
} from './proveInstrument.ts';

export { weighInstrument, type WeighedNeed, type WeighRequest } from './weighInstrument.ts';
export { purposeNames } from '../core/weigh/index.ts';
export { makeInstrument, type MadeDesign, type MakeRequest } from './makeInstrument.ts';
export { publishInstrument, type PublishedKit, type PublishRequest } from './publishInstrument.ts';
export { licenceNames } from '../core/publish/index.ts';
export { readDesign, type Design } from './design.ts';
export { INSTRUMENT_FILE, newInstrument } from './newInstrument.ts';
export { exampleNames, type ExampleName } from './examples/exampleNames.ts';
export { paperNames, partNames, type PaperName } from '../core/make/index.ts';
export { fitBuild, type FitRequest, type FittedBuild } from './fitBuild.ts';
export { buildsInParallel } from './buildsInParallel.ts';
export { type ReadingChoices, type RememberedMoment } from './logChoices.ts';
export { logDesign, logSources, type LogDesign, type LogRun, type LogSummary } from './logSources.ts';
export { logShared, type SharedRun, type SharedSummary } from './logShared.ts';
export { fitNorth, type FittedNorth, type NorthRequest, type NorthTarget } from './fit/fitNorth.ts';
export {
  fitCups,
  type CupsFields,
  type CupsLine,
  type CupsRequest,
  type FittedCupsBuild,
} from './fit/fitCups.ts';
export { fitRelease, type FittedRelease, type ReleaseRequest } from './fit/fitRelease.ts';
export { compareReadings, type ComparedReadings, type ReadingFigures } from './compareReadings.ts';
export { thinRecord, type Thinned } from './thinRecord.ts';
export { archiveRecord, type Archived, type ArchiveRequest } from './archiveRecord.ts';
export { AlertRelay, LiveRelay, type Logging } from './liveRelay.ts';
export { RecordOutline, type OutlinePoint } from './recordOutline.ts';
export { LiveStations, type LiveMean, type LiveWind, type LiveWinds } from './logLive.ts';
export {
  reviewOfRecord,
  reviewRecord,
  shortReasons,
  type Reviewed,
  type ReviewPorts,
} from './review/reviewRecord.ts';
export type { ReviewRequest } from './review/reviewRequest.ts';
export { watchFaults, type WatchedFaults, type WatchRun } from './watchFaults.ts';
export type { LiveAlerts } from './faultAlerts.ts';
