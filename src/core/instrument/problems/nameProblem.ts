import type { FieldSchema } from '../schema/fieldSchema.ts';
import { pathText, type Path } from '../yaml/places.ts';
import { exampleOf } from './exampleOf.ts';
import { placesOfName } from './fieldAt.ts';
import type { FieldProblem } from './fieldProblem.ts';
import { nearest } from './nearest.ts';
import { either, namesOf, quoted, shown } from './words.ts';

/** The fix for a name the group does not have, and the field that may have been meant. */
function unknownFieldFix(
  path: Path,
  known: readonly string[],
): { readonly fix: string; readonly meant?: Path } {
  const name = String(path.at(-1));
  const group = path.slice(0, -1);
  const elsewhere = placesOfName(name);
  if (elsewhere.includes(pathText(path))) {
    return { fix: `Remove it: it belongs to another kind of ${pathText(group)}, or change the kind.` };
  }
  const near = nearest(name, known);
  if (near) return { fix: `Write ${near} instead.`, meant: [...group, near] };
  if (elsewhere.length > 0) return { fix: `Move it: it belongs at ${either(elsewhere)}.` };
  return { fix: 'Remove it.' };
}

/** A field that the group does not have. */
export function unknownField(path: Path, group: FieldSchema, value: unknown): FieldProblem {
  const known = namesOf(group);
  return {
    code: 'instrument/unknown-field',
    path,
    part: 'key',
    what: `There is no field of that name${path.length > 1 ? ` in ${pathText(path.slice(0, -1))}` : ''}.`,
    got: `${quoted(String(path.at(-1)))} with ${shown(value)}`,
    allowed: known.join(', '),
    ...unknownFieldFix(path, known),
  };
}

/** A field that must be there and is not. */
export function missingField(path: Path, schema: FieldSchema, allowed: string): FieldProblem {
  const group = pathText(path.slice(0, -1));
  return {
    code: 'instrument/missing-field',
    path,
    part: 'value',
    what: `${pathText(path)} is missing.`,
    got: 'nothing',
    allowed,
    fix: `Add \`${path.at(-1)!}: ${exampleOf(schema)}\`${group === '' ? '' : ` under ${group}`}.`,
  };
}

/** A word that is none of the few allowed. */
export function unknownChoice(path: Path, names: readonly (string | number)[], value: unknown): FieldProblem {
  const known = names.map(String);
  const near = typeof value === 'string' ? nearest(value, known) : null;
  return {
    code: 'instrument/unknown-choice',
    path,
    part: 'value',
    what: `${pathText(path)} is not one of its choices.`,
    got: shown(value),
    allowed: either(known),
    fix: `Write ${near ?? either(known)}.`,
  };
}
