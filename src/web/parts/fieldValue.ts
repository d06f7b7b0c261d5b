import type { FieldSchema } from '../../core/instrument/index.ts';

/** The value at a path within groups; `undefined` where there is none. */
export function valueAt(groups: unknown, path: readonly string[]): unknown {
  return path.reduce<unknown>(
    (group, name) => (group as Record<string, unknown> | null | undefined)?.[name],
    groups,
  );
}

/** Name of the field that tells the entries of a group apart. */
export function kindName(schema: FieldSchema): 'kind' | 'shape' | null {
  const first = schema.oneOf?.[0]?.properties;
  if (!first) return null;
  if (first['kind']?.const !== undefined) return 'kind';
  return first['shape']?.const === undefined ? null : 'shape';
}

/** The entry of a group that has kinds. */
export function entryOf(schema: FieldSchema, kind: string): FieldSchema | null {
  const name = kindName(schema);
  return schema.oneOf?.find(({ properties }) => properties?.[name ?? '']?.const === kind) ?? null;
}

/** A value that a field without default may begin with: its example, or the middle of its range. */
function firstValue(field: FieldSchema): unknown {
  const [example] = field.examples ?? [];
  if (example !== undefined) return example;
  if (field.enum) return field.enum[0];
  return field.minimum === undefined ? null : (field.minimum + (field.maximum ?? field.minimum)) / 2;
}

/**
 * A whole group of another kind: what must be stated, taken from the group before where it has a field of that name.
 *
 * What has a default is left out, so that each kind brings its own.
 */
export function groupOfKind(
  schema: FieldSchema,
  kind: string,
  before: Readonly<Record<string, unknown>>,
): Record<string, unknown> {
  const name = kindName(schema)!;
  const entry = entryOf(schema, kind)!;
  const group: Record<string, unknown> = { [name]: kind };
  for (const field of entry.required ?? []) {
    if (field === name) continue;
    group[field] = before[field] ?? firstValue(entry.properties![field]!);
  }
  return group;
}

/** A group without kinds to begin from: each field that must be stated. */
export function firstGroup({ properties = {}, required = [] }: FieldSchema): Record<string, unknown> {
  return Object.fromEntries(required.map((name) => [name, firstValue(properties[name]!)]));
}
