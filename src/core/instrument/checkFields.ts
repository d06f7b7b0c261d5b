import type { FieldProblem } from './problems/fieldProblem.ts';
import { issueProblems } from './problems/issueProblems.ts';
import type { PartialDraft } from './rules/finding.ts';
import { fileRules } from './rules/fileRules.ts';
import { instrumentSchema, type InstrumentDraft } from './schema/instrumentSchema.ts';
import { pathFrom, pathText, type Path } from './yaml/places.ts';
import type { Fields } from './yaml/yamlTree.ts';

/** The file without the fields at these paths. */
function without(value: unknown, paths: readonly Path[]): unknown {
  if (typeof value !== 'object' || value === null || Array.isArray(value)) return value;
  const copy: Fields = Object.create(null) as Fields;
  for (const [name, part] of Object.entries(value)) {
    const below = paths.filter(([first]) => first === name).map((path) => path.slice(1));
    if (!below.some((path) => path.length === 0)) copy[name] = without(part, below);
  }
  return copy;
}

/** The sections that can be read once what is wrong in them is left out. */
function readableSections(fields: Fields, wrong: readonly Path[]): PartialDraft {
  const rest = without(fields, wrong) as Fields;
  const sections = Object.entries(instrumentSchema.shape).map(([name, section]) => [
    name,
    section.safeParse(rest[name]).data,
  ]);
  return Object.fromEntries(sections) as PartialDraft;
}

/** Whether a path is the other or one of its groups. */
function leadsTo(group: string, path: string): boolean {
  return path.startsWith(group) && ['', '.', '['].includes(path.charAt(group.length));
}

/** What is wrong between fields, leaving out every rule about a field that is wrong by itself. */
function ruleProblems(draft: PartialDraft, wrong: readonly Path[]): readonly FieldProblem[] {
  const wrongNames = wrong.map(pathText);
  return fileRules(draft)
    .filter(
      ({ fields }) =>
        !fields.some((field) => wrongNames.some((name) => leadsTo(field, name) || leadsTo(name, field))),
    )
    .map(({ fields, ...problem }) => ({ ...problem, path: pathFrom(fields[0]), part: 'value' }));
}

/** One problem a slip: a number too large to be whole is also out of range, and a mistyped field is also missing. */
function eachOnce(problems: readonly FieldProblem[]): readonly FieldProblem[] {
  const meant = problems.flatMap(({ meant: path }) => (path ? [path] : []));
  const seen = new Set(meant.map((path) => JSON.stringify(['instrument/missing-field', path])));
  return problems.filter(({ path, code }) => {
    const name = JSON.stringify([code, path]);
    return !seen.has(name) && seen.add(name);
  });
}

/** What came of checking the fields. */
export interface Checked {
  /** The file with its defaults; `null` when a field is wrong by itself. */
  readonly draft: InstrumentDraft | null;
  readonly problems: readonly FieldProblem[];
}

/**
 * Checks every field, then what fields say together.
 *
 * @param fields - The file as plain values.
 * @param unknown - Fields whose value could not be read; nothing more is said about them.
 */
export function checkFields(fields: Fields, unknown: readonly Path[]): Checked {
  const parsed = instrumentSchema.safeParse(fields);
  if (parsed.success) return { draft: parsed.data, problems: ruleProblems(parsed.data, unknown) };
  const problems = eachOnce(parsed.error.issues.flatMap((issue) => issueProblems(issue, fields))).filter(
    ({ path }) => !unknown.some((other) => leadsTo(pathText(other), pathText(path))),
  );
  const wrong = problems.flatMap(({ path, meant }) => (meant ? [path, meant] : [path])).concat(unknown);
  return { draft: null, problems: [...problems, ...ruleProblems(readableSections(fields, wrong), wrong)] };
}
