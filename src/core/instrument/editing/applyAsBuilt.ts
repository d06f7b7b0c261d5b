import type { AsBuilt } from '../asBuilt.ts';
import { readInstrument } from '../readInstrument.ts';
import { asBuiltLines } from './asBuiltText.ts';
import { withSection } from './topSection.ts';

/**
 * An instrument file with what a recorded turn has found written into it; comments and layout stay as they are.
 *
 * Only the section `asBuilt` is touched: replaced where there is one, else added at the end.
 *
 * @param text - The file as it is. [characters]
 * @param fileName - Shown in front of line and column, should the file be refused.
 * @returns A file that reads back to the same instrument with that table.
 * @throws what `readInstrument` throws when the file as it is cannot be read.
 * @check src/core/instrument/editing/applyAsBuilt.test.ts
 */
export function applyAsBuilt(text: string, fileName: string, asBuilt: AsBuilt): string {
  readInstrument(text, fileName);
  const written = withSection(text, { name: 'asBuilt', lines: asBuiltLines(asBuilt), value: asBuilt });
  readInstrument(written, fileName);
  return written;
}
