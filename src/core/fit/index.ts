export type { Figure } from './angles/fitAngles.ts';
export type { Cause, CausePicture } from './causes/cause.ts';
export { certificateOf, type Certificate, type CertificateRow } from './certificate/certificate.ts';
export { certificatePage } from './certificate/certificatePage.ts';
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
