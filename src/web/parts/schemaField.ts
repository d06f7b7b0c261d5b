import type { FieldSchema } from '../../core/instrument/index.ts';
import { words } from '../words/en.ts';
import { readNumber, shownNumber } from './numbers.ts';

/** The schema of a field by its path; `null` where the file has no such field. A kind is looked for in every entry. */
export function schemaAt(schema: FieldSchema, path: readonly string[]): FieldSchema | null {
  const [name, ...rest] = path;
  if (name === undefined) return schema;
  const own = schema.properties?.[name];
  if (own) return schemaAt(own, rest);
  for (const entry of schema.oneOf ?? []) {
    const found = schemaAt(entry, path);
    if (found) return found;
  }
  return null;
}

/** What may be typed, with its unit: `20 to 400 mm`. */
export function rangeText({ minimum, maximum, exclusiveMaximum, unit }: FieldSchema): string {
  const high = maximum ?? exclusiveMaximum;
  const shownUnit = unit === undefined || unit === '-' ? '' : ` ${unit}`;
  if (minimum === undefined || high === undefined) return '';
  return words.fields.range(shownNumber(minimum, 6), shownNumber(high, 6), shownUnit);
}

/** What stands against a typed number; `null` when nothing does. */
export function complaint(text: string, schema: FieldSchema): string | null {
  const value = readNumber(text);
  if (value === null) return words.fields.notNumber(text.slice(0, 40));
  const types = [schema.type ?? []].flat();
  if (types.includes('integer') && !Number.isInteger(value)) return words.fields.notWhole;
  const { minimum = -Infinity, maximum = Infinity, exclusiveMaximum = Infinity } = schema;
  if (value < minimum || value > maximum || value >= exclusiveMaximum)
    return words.fields.outside(rangeText(schema));
  return null;
}

/** True where a field may be left out, so that its default or its rule holds. */
export function isOptional({ type, defaultRule }: FieldSchema): boolean {
  return [type ?? []].flat().includes('null') || defaultRule !== undefined;
}

/** What holds where a field is left out, in a few words; empty where nothing is said. */
export function ruleText({ defaultRule }: FieldSchema): string {
  return (defaultRule ?? '').replace(/^null, for /, '');
}
