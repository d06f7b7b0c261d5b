import * as z from 'zod';
import { instrumentSchema } from './instrumentSchema.ts';

/** What the schema says about one field: the part of JSON Schema that we use, and two notes of ours. */
export interface FieldSchema {
  readonly type?: string | readonly string[];
  readonly description?: string;
  readonly properties?: Readonly<Record<string, FieldSchema>>;
  readonly required?: readonly string[];
  readonly items?: FieldSchema;
  /** A group with a `kind` or `shape`: one entry each. */
  readonly oneOf?: readonly FieldSchema[];
  /** Groups of which at least one must be whole. */
  readonly anyOf?: readonly { readonly required: readonly string[] }[];
  readonly const?: string | number;
  readonly enum?: readonly (string | number)[];
  readonly minimum?: number;
  readonly maximum?: number;
  readonly exclusiveMaximum?: number;
  readonly minLength?: number;
  readonly maxLength?: number;
  readonly minItems?: number;
  readonly maxItems?: number;
  readonly default?: unknown;
  readonly examples?: readonly unknown[];
  /** Unit of the number; `-` for none. */
  readonly unit?: string;
  /** How the default follows from other fields. */
  readonly defaultRule?: string;
}

type Json = Record<string, unknown>;

/** The entry of a schema that may be null, or `undefined` when the schema is of another sort. */
function besideNull(schema: Json): Json | undefined {
  const entries = Array.isArray(schema.anyOf) ? (schema.anyOf as Json[]) : [];
  return entries.some(({ type }) => type === 'null') ? entries.find(({ type }) => type !== 'null') : undefined;
}

/** The same schema with "this or null" written as one entry of two types, all the way down. */
function withPlainNulls(value: unknown): unknown {
  if (Array.isArray(value)) return value.map(withPlainNulls);
  if (typeof value !== 'object' || value === null) return value;
  const schema = value as Json;
  const inner = besideNull(schema);
  if (!inner) return Object.fromEntries(Object.entries(schema).map(([key, part]) => [key, withPlainNulls(part)]));
  const outer = Object.fromEntries(Object.entries(schema).filter(([key]) => key !== 'anyOf'));
  return withPlainNulls({ ...inner, ...outer, type: [inner.type, 'null'] });
}

/** The instrument file as JSON Schema of draft 2020-12, as zod gives it, input side. */
function convert(): FieldSchema {
  return withPlainNulls(z.toJSONSchema(instrumentSchema, { io: 'input', target: 'draft-2020-12' })) as FieldSchema;
}

let schema: FieldSchema | null = null;

/** What the schema says about every field of the instrument file; made once. */
export function fieldSchema(): FieldSchema {
  return (schema ??= convert());
}
