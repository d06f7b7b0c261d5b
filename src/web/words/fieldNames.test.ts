import { expect, it } from 'vitest';
import { fieldSchema, type FieldSchema } from '../../core/instrument/index.ts';
import { fieldNames } from './en/fieldNames.ts';

/** Every path of the file, of every kind of a group. */
function pathsOf(schema: FieldSchema, path: readonly string[]): string[] {
  const own = Object.entries(schema.properties ?? {}).flatMap(([name, field]) => [
    [...path, name].join('.'),
    ...pathsOf(field, [...path, name]),
  ]);
  return [...own, ...(schema.oneOf ?? []).flatMap((entry) => pathsOf(entry, path))];
}

it('every field that a maker may set has a short name, and no name stands for a field that is not there', () => {
  const paths = new Set(pathsOf(fieldSchema(), []).filter((path) => !/^(asBuilt|vanewright)/.test(path)));
  expect(Object.keys(fieldNames).filter((path) => !paths.has(path))).toEqual([]);
  expect([...paths].filter((path) => !(path in fieldNames))).toEqual([]);
});
