export type { Figure } from './angles/fitAngles.ts';
export type { Cause, CausePicture } from './causes/cause.ts';
export { certificateOf, type Certificate, type CertificateRow } from './certificate/certificate.ts';
export { certificatePage } from './certificate/certificatePage.ts';
export {
  certificateOrigin,
  certificateTables,
  certificateVerdict,
  NOTHING_CHANGED,
  type CertificateTable,
  type CertificateTables,
} from './certificate/certificateTables.ts';
export { asBuiltChanges, type AsBuiltChange } from './certificate/compare.ts';
export type { Fit, FittedBore, FittedChannel, FittedDisc, FittedWiring, Unknown } from './fit.ts';
export { fitRecording, type FitOptions } from './fitRecording.ts';
export type { ColumnLevels, Verdict } from './levels/channelLevels.ts';
export { readRecording } from './reading/readRecording.ts';
export type {
  ReadingHints,
  Recording,
  RecordingFile,
  Repair,
  RepairKind,
  Stretch,
  Turned,
} from './reading/recording.ts';
export { recordingText } from './reading/textLines.ts';
export type { BuiltPosition, TableError } from './table/builtTable.ts';
export type { EdgeCurve, Interpolation } from './table/edgeCurves.ts';
export type { Misreads } from './table/misreads.ts';
export { causePicture } from './pictures/causePicture.ts';
export { signalsPicture } from './pictures/signals.ts';
export { widthDial } from './pictures/widthDial.ts';
export { wordStrip } from './pictures/wordStrip.ts';
export { bounceOf, edgeGaps, type Bounce } from './cups/bounce.ts';
export { carRun, type CarRun } from './cups/carRun.ts';
export { clockOffset, type ClockOffset, type EvenSeries } from './cups/alignClocks.ts';
export { legsOf, trackFromPositions, type Leg, type TrackPoint } from './cups/legs.ts';
export { pulsesPerTurn, type PulsesPerTurn } from './cups/pulsesPerTurn.ts';
export {
  blocksOf,
  fittedCups,
  type Block,
  type FittedCups,
  type TimedValue,
} from './cups/referenceSeries.ts';
export { residualPlot } from './cups/residualPlot.ts';
export type { Place } from './north/place.ts';
export { setNorth, type NorthAdvice, type NorthEntry } from './north/setNorth.ts';
export {
  compassBearing,
  declinationAt,
  knownBearing,
  landmarkBearing,
  sunBearing,
  type Declination,
  type TrueBearing,
} from './north/trueBearing.ts';
export { releaseTest, type ReleaseTest, type TimedHeading } from './release/releaseTest.ts';
export { spinDown, type SpinDown } from './release/spinDown.ts';
