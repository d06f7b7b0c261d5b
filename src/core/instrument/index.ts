export type {
  ControllerSpec,
  CupsSpec,
  Instrument,
  Need,
  NorthSetting,
  PowerSpec,
  SensingNeed,
  SiteSpec,
  SiteWind,
  Tool,
} from './instrument.ts';
export { applyAsBuilt } from './editing/applyAsBuilt.ts';
export { fileFields } from './editing/fileFields.ts';
export { applyFields, type FieldEdits } from './editing/applyFields.ts';
export { setField, setFields, type FieldEdit, type FieldValue } from './editing/setField.ts';
export { asBuiltHash, type AsBuilt, type AsBuiltChannel, type AsBuiltPosition } from './asBuilt.ts';
export { codeNeedOf } from './codeNeed.ts';
export type { CupShapeSpec, PartsSpec, VaneSpec } from './partsSpec.ts';
export { headingOfDiscAngle, headingOfPosition, type HeadingFrame } from './heading.ts';
export { instrumentFileReference } from './instrumentFileReference.ts';
export { instrumentJsonSchema } from './instrumentJsonSchema.ts';
export { discAsWritten, readInstrument, type InstrumentFile } from './readInstrument.ts';
export { startingFile } from './startingFile.ts';
export { INSTRUMENT_FILE_MOST_BYTES } from './yaml/readableText.ts';
export { fieldSchema, type FieldSchema } from './schema/fieldSchema.ts';
