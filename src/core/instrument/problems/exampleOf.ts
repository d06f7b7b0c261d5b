import type { FieldSchema } from '../schema/fieldSchema.ts';
import { fits } from './unitHint.ts';

/** A value that works for a field, as YAML on one line: `84`, `{ kind: fdm }`. */
export function exampleOf(schema: FieldSchema): string {
  if (schema.const !== undefined) return String(schema.const);
  const known = [schema.default, ...(schema.examples ?? []), schema.enum?.[0]].find(isSingle);
  if (known !== undefined) return String(known);
  const entry = schema.oneOf?.[0] ?? schema;
  if (entry.items) return `[${exampleOf(entry.items)}]`;
  if (!entry.properties) return String(schema.minimum ?? 'true');
  const needed = [...(entry.required ?? []), ...(entry.anyOf?.[0]?.required ?? [])];
  if (needed.length === 0) return '{}';
  return `{ ${needed.map((name) => `${name}: ${exampleOf(entry.properties![name]!)}`).join(', ')} }`;
}

function isSingle(value: unknown): value is string | number | boolean {
  return ['string', 'number', 'boolean'].includes(typeof value);
}

/** A number that fits the field and lies near the written one. */
export function nearestFitting(written: number, schema: FieldSchema): number | string {
  const { minimum = -Infinity, maximum = Infinity } = schema;
  if (Number.isNaN(written)) return exampleOf(schema);
  const listed = schema.enum?.filter((value) => typeof value === 'number');
  if (listed?.length) return listed.reduce((a, b) => (Math.abs(b - written) < Math.abs(a - written) ? b : a));
  const inside = Math.min(Math.max(written, minimum), maximum);
  const value = schema.type === 'integer' ? Math.round(inside) : inside;
  return fits(value, schema) ? value : exampleOf(schema);
}
