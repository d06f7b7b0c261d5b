import type { FieldSchema, FieldValue } from '../../core/instrument/index.ts';
import type { Problem } from '../../core/error/index.ts';
import type { Project } from '../project/project.ts';
import { useStore } from '../project/store.ts';
import type { PageParts } from '../shell/pageParts.ts';
import { words } from '../words/en.ts';
import { CheckField } from './CheckField.tsx';
import { ChoiceField } from './ChoiceField.tsx';
import { valueAt } from './fieldValue.ts';
import { ListField } from './ListField.tsx';
import { NumberField } from './NumberField.tsx';
import { isOptional, schemaAt } from './schemaField.ts';
import { TextField } from './TextField.tsx';

interface FileFieldProps extends Pick<PageParts, 'project' | 'schema'> {
  /** Path of the field in the file, such as `disc.diameterMm`. */
  readonly path: string;
  /** The field's own schema, where the path alone does not tell it: a field of one kind of a group. */
  readonly own?: FieldSchema | undefined;
}

/** What reading the whole file said about a field. */
function problemOf(problems: readonly Problem[], path: string): string | undefined {
  const found = problems.find(({ where }) => where.endsWith(`› ${path}`) || where === path);
  return found && `${found.what} ${found.fix}`;
}

/** What the file says of a field, and what it comes to: as it was last read, or its default. */
export function standing({ fields, design }: Project, path: readonly string[], field: FieldSchema) {
  const written = valueAt(fields, path);
  const read = valueAt(design?.instrument, path);
  return { written, comesTo: written ?? read ?? field.default };
}

/** One field of the instrument file, drawn from its schema; a change is written into the file at once. */
export function FileField({ project, schema, path, own }: FileFieldProps) {
  const state = useStore(project.state);
  const parts = path.split('.');
  const field = own ?? schemaAt(schema, parts);
  if (field === null) return null;
  const name = words.fields.names[path] ?? parts.at(-1)!;
  const { written, comesTo } = standing(state, parts, field);
  const set = (next: FieldValue): void => void project.set(parts, next);
  const problem = state.answer?.ok === false ? problemOf(state.answer.problems, path) : undefined;
  const types = [field.type ?? []].flat();
  if (field.enum) {
    const choices = field.enum
      .map(String)
      .map((value) => ({ value, text: words.fields.choice(path, value) }));
    return (
      <ChoiceField
        name={name}
        hint={field.description ?? ''}
        value={String(comesTo)}
        choices={choices}
        problem={problem}
        onChange={(text) => set(field.enum!.find((choice) => String(choice) === text))}
      />
    );
  }
  if (types.includes('boolean')) {
    return <CheckField name={name} hint={field.description ?? ''} value={comesTo === true} onChange={set} />;
  }
  if (types.includes('string')) {
    return (
      <TextField name={name} schema={field} value={String(comesTo ?? '')} problem={problem} onChange={set} />
    );
  }
  if (types.includes('array')) {
    return (
      <ListField
        name={name}
        schema={field}
        value={isOptional(field) ? written : comesTo}
        problem={problem}
        onChange={(list) => set(list as FieldValue)}
      />
    );
  }
  const isOpen = isOptional(field);
  const value = isOpen ? written : comesTo;
  return (
    <NumberField
      name={name}
      schema={field}
      value={typeof value === 'number' ? value : null}
      standsFor={isOpen && typeof comesTo === 'number' ? comesTo : undefined}
      problem={problem}
      onChange={(next) => set(next ?? undefined)}
    />
  );
}
