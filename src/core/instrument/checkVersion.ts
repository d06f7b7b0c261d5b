import type { FieldProblem } from './problems/fieldProblem.ts';
import { shown } from './problems/words.ts';
import { FILE_VERSION } from './schema/instrumentSchema.ts';
import type { Places } from './yaml/places.ts';
import type { Fields } from './yaml/yamlTree.ts';

const FIELD = 'vanewright';
const FIRST_LINE = `\`${FIELD}: ${FILE_VERSION}\``;

/** What the file says about its format: nothing is wrong, something is, or it cannot be read further. */
export function versionProblem(
  fields: Fields,
  places: Places,
): { readonly problem: FieldProblem; readonly isLast: boolean } | null {
  const base = { path: [FIELD], part: 'key', allowed: `${FIRST_LINE} as the first field` } as const;
  if (!(FIELD in fields)) {
    const problem: FieldProblem = {
      ...base,
      code: 'instrument/no-version',
      what: 'The file does not say that it is an instrument file, and of which version.',
      got: `no field ${FIELD}`,
      fix: `Write ${FIRST_LINE} as the first line.`,
    };
    return { problem, isLast: false };
  }
  if (fields[FIELD] !== FILE_VERSION) {
    const isNewer = typeof fields[FIELD] === 'number' && fields[FIELD] > FILE_VERSION;
    const problem: FieldProblem = {
      ...base,
      code: 'instrument/unknown-version',
      part: 'value',
      what: `This program reads version ${FILE_VERSION} of the instrument file, and this is another.`,
      got: shown(fields[FIELD]),
      allowed: String(FILE_VERSION),
      fix: isNewer ? 'Use a newer vanewright for this file.' : `Write ${FIRST_LINE} as the first line.`,
    };
    return { problem, isLast: true };
  }
  const own = places.offsetOf([FIELD], 'key');
  if (Object.keys(fields).every((name) => places.offsetOf([name], 'key') >= own)) return null;
  const problem: FieldProblem = {
    ...base,
    code: 'instrument/version-not-first',
    what: 'The version must come before everything else.',
    got: `${FIELD} after other fields`,
    fix: `Move ${FIRST_LINE} to the first line.`,
  };
  return { problem, isLast: false };
}
