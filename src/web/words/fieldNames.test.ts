import { expect, it } from 'vitest';
import { fieldSchema, type FieldSchema } from '../../core/instrument/index.ts';
import { choiceNames } from './en/choiceNames.ts';
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

/** Every choice of the file, as `path=word`. */
function choicesOf(schema: FieldSchema, path = ''): string[] {
  const at = schema.const === undefined ? (schema.enum ?? []) : [schema.const];
  const deeper = Object.entries(schema.properties ?? {}).flatMap(([name, field]) =>
    choicesOf(field, path === '' ? name : `${path}.${name}`),
  );
  const kinds = (schema.oneOf ?? []).flatMap((entry) => choicesOf(entry, path));
  return [...at.map((value) => `${path}=${String(value)}`), ...deeper, ...kinds];
}

it('a choice that has plain words is one that the file has, and no choice of such a field is left without', () => {
  const named = Object.entries(choiceNames).flatMap(([path, texts]) =>
    Object.keys(texts).map((value) => `${path}=${value}`),
  );
  const ofFile = choicesOf(fieldSchema()).filter(
    (choice) => choice.slice(0, choice.indexOf('=')) in choiceNames,
  );
  expect(named.toSorted()).toEqual([...new Set(ofFile)].toSorted());
});
