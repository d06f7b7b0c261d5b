import type * as z from 'zod';
import type { FieldSchema } from '../schema/fieldSchema.ts';
import { pathText, type Path } from '../yaml/places.ts';
import { exampleOf } from './exampleOf.ts';
import { fieldAt, valueAt } from './fieldAt.ts';
import type { FieldProblem } from './fieldProblem.ts';
import { missingField, unknownChoice, unknownField } from './nameProblem.ts';
import { numberProblem, textForNumber, types } from './numberProblem.ts';
import { allowedText, shown } from './words.ts';

type Issue = z.core.$ZodIssue;

function simple(
  code: string,
  what: string,
  path: Path,
  schema: FieldSchema,
  value: unknown,
  fix: string,
): FieldProblem {
  return {
    code,
    path,
    part: 'value',
    what,
    got: shown(value, schema.unit),
    allowed: allowedText(schema),
    fix,
  };
}

/** A value of the wrong sort: text, list or group where something else belongs. */
function wrongType(path: Path, schema: FieldSchema, value: unknown): FieldProblem {
  const name = pathText(path) || 'The file';
  if (value === null) {
    const fix = `Give it a value, such as ${exampleOf(schema)}, or remove the line.`;
    return simple('instrument/empty-field', `${name} is written but has no value.`, path, schema, value, fix);
  }
  const [type = 'object'] = types(schema);
  let fix = `Write ${path.at(-1)!}: ${exampleOf(schema)}`;
  if (type === 'boolean') fix = `Write ${/^(y|yes|on)$/i.test(String(value)) ? 'true' : 'false'}`;
  if (type === 'string' && typeof value !== 'object')
    fix = `Write it between quotation marks: "${String(value)}"`;
  if (type === 'object' && !schema.oneOf) fix = `Write its fields below it, indented by two spaces`;
  return simple('instrument/wrong-type', `${name} is of another sort.`, path, schema, value, `${fix}.`);
}

function wrongLength(path: Path, schema: FieldSchema, value: unknown): FieldProblem {
  const size = Array.isArray(value) ? `${value.length} items` : `${String(value).length} characters`;
  const problem = simple(
    'instrument/wrong-length',
    `${pathText(path)} is too short or too long.`,
    path,
    schema,
    value,
    '',
  );
  return {
    ...problem,
    got: size,
    fix: `Write ${path.at(-1)!}: ${exampleOf(schema)}, or something as short.`,
  };
}

function badText(path: Path, schema: FieldSchema, value: unknown): FieldProblem {
  if (schema.minLength === undefined) {
    const form = `${pathText(path)} does not have the form it must have.`;
    const example = `Write it like '${exampleOf(schema)}', quotation marks included.`;
    return simple('instrument/bad-text', form, path, schema, value, example);
  }
  const what = `${pathText(path)} is blank, or holds a line break or a character that cannot be seen.`;
  const fix = 'Type the text again on one line, with letters, figures and ordinary signs only.';
  return simple('instrument/bad-text', what, path, schema, value, fix);
}

/** One issue about a field the schema knows. */
function ofField(issue: Issue, path: Path, schema: FieldSchema, value: unknown): FieldProblem {
  if (value === undefined) return missingField(path, schema, allowedText(schema));
  const wantsNumber = types(schema).some((type) => type === 'number' || type === 'integer');
  if (wantsNumber && typeof value === 'string') return textForNumber(path, schema, value);
  if (wantsNumber && typeof value === 'number') return numberProblem(path, schema, value);
  if (issue.code === 'invalid_value' && typeof value === 'string')
    return unknownChoice(path, schema.enum ?? [], value);
  if (issue.code === 'invalid_format') return badText(path, schema, value);
  if (issue.code === 'too_big' || issue.code === 'too_small') return wrongLength(path, schema, value);
  return wrongType(path, schema, value);
}

/** A group that needs its `kind` or `shape` first. */
function ofKind(path: Path, root: unknown): FieldProblem {
  const group = fieldAt(path.slice(0, -1), root);
  const kinds = (group?.oneOf ?? []).flatMap((entry) => entry.properties?.[String(path.at(-1))]?.const ?? []);
  const value = valueAt(root, path);
  const field: FieldSchema = { type: 'string', enum: kinds };
  return value === undefined
    ? missingField(path, field, allowedText(field))
    : unknownChoice(path, kinds, value);
}

/**
 * What a maker is told about one issue of the schema.
 *
 * @param issue - As zod gives it.
 * @param root - The file as it was checked.
 */
export function issueProblems(issue: Issue, root: unknown): readonly FieldProblem[] {
  const path = issue.path.map((step) => (typeof step === 'number' ? step : String(step)));
  if (issue.code === 'unrecognized_keys') {
    const group = fieldAt(path, root) ?? {};
    return issue.keys.map((key) => unknownField([...path, key], group, valueAt(root, [...path, key])));
  }
  if (issue.code === 'invalid_union') return [ofKind(path, root)];
  return [ofField(issue, path, fieldAt(path, root) ?? {}, valueAt(root, path))];
}
