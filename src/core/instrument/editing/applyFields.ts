import { readInstrument } from '../readInstrument.ts';
import { withFields, type FieldEdits } from './sectionFields.ts';

export type { FieldEdits };

/**
 * An instrument file with some fields of one section set; comments and layout stay as they are.
 *
 * A section that is missing, or null, is added with those fields alone.
 *
 * @param text - The file as it is. [characters]
 * @param fileName - Shown in front of line and column, should the file be refused.
 * @returns A file that reads back to the same instrument with those fields.
 * @throws what `readInstrument` throws when the file cannot be read, as it is or with a value out of range.
 * @check src/core/instrument/editing/applyFields.test.ts
 */
export function applyFields(text: string, fileName: string, edits: FieldEdits): string {
  readInstrument(text, fileName);
  const written = withFields(text, edits);
  readInstrument(written, fileName);
  return written;
}
