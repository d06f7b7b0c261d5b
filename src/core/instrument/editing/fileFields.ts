import { parseDocument } from 'yaml';

/**
 * What a file says, field by field, as far as it can be made out; nothing is checked and no default is filled in.
 *
 * @param text - An instrument file, good or not. [characters]
 * @returns Groups within groups; an empty one where the text is no YAML at all.
 * @check src/core/instrument/editing/fileFields.test.ts
 */
export function fileFields(text: string): Readonly<Record<string, unknown>> {
  try {
    const value: unknown = parseDocument(text, { version: '1.2', schema: 'core' }).toJS({ maxAliasCount: 0 });
    const isGroup = typeof value === 'object' && value !== null && !Array.isArray(value);
    return isGroup ? (value as Record<string, unknown>) : {};
  } catch {
    // An alias that is refused, or one that leads nowhere: such a file has no fields that could be shown.
    return {};
  }
}
