import { fieldSchema, type FieldSchema } from '../schema/fieldSchema.ts';
import type { Path } from '../yaml/places.ts';

/** Value of a field of a group, or `undefined` where the value is no group or lacks it. */
export function valueIn(value: unknown, step: string | number): unknown {
  if (typeof value !== 'object' || value === null || !Object.hasOwn(value, step)) return undefined;
  return (value as Record<string | number, unknown>)[step];
}

/** Value at the end of a path, or `undefined` where the file has none. */
export function valueAt(root: unknown, path: Path): unknown {
  return path.reduce(valueIn, root);
}

/** The entry of a group with kinds that the written `kind` or `shape` picks; the group itself when it picks none. */
function entryFor(schema: FieldSchema, value: unknown): FieldSchema {
  const picked = schema.oneOf?.find((entry) =>
    Object.entries(entry.properties ?? {}).every(
      ([name, field]) => field.const === undefined || field.const === valueIn(value, name),
    ),
  );
  return picked ?? schema;
}

function propertyOf(schema: FieldSchema, name: string): FieldSchema | undefined {
  return schema.properties && Object.hasOwn(schema.properties, name) ? schema.properties[name] : undefined;
}

/**
 * What the schema says about one field, or `null` where it knows none of that name.
 *
 * @param path - Way to the field.
 * @param root - The whole file, since `kind` and `shape` decide which fields a group has.
 */
export function fieldAt(path: Path, root: unknown): FieldSchema | null {
  let schema = fieldSchema();
  let value = root;
  for (const step of path) {
    const next = typeof step === 'number' ? schema.items : propertyOf(schema, step);
    if (!next) return null;
    value = valueIn(value, step);
    schema = entryFor(next, value);
  }
  return schema;
}

/** Every place where a name belongs: `diameterMm` is at `disc.diameterMm`, `disc.bore.diameterMm` and more. */
export function placesOfName(name: string): readonly string[] {
  const found = new Set<string>();
  const visit = (schema: FieldSchema, prefix: string): void => {
    for (const [field, inner] of Object.entries(schema.properties ?? {})) {
      const path = prefix === '' ? field : `${prefix}.${field}`;
      if (field === name || path === name) found.add(path);
      visit(inner, path);
    }
    for (const entry of schema.oneOf ?? []) visit(entry, prefix);
  };
  visit(fieldSchema(), '');
  return [...found];
}
