import type { Problem } from '../../core/error/index.ts';
import { useStore } from '../project/store.ts';
import type { PageParts } from '../shell/pageParts.ts';
import { words } from '../words/en.ts';
import { ChoiceField } from './ChoiceField.tsx';
import { NumberField } from './NumberField.tsx';
import { schemaAt } from './schemaField.ts';

interface FileFieldProps extends Pick<PageParts, 'project' | 'schema'> {
  /** Path of the field in the file, such as `disc.diameterMm`. */
  readonly path: string;
}

/** The value of a field in the instrument as it was last read. */
function valueAt(instrument: unknown, path: readonly string[]): unknown {
  return path.reduce<unknown>((group, name) => (group as Record<string, unknown> | null)?.[name], instrument);
}

/** What reading the whole file said about a field. */
function problemOf(problems: readonly Problem[], path: string): string | undefined {
  const found = problems.find(({ where }) => where.endsWith(`› ${path}`) || where === path);
  return found && `${found.what} ${found.fix}`;
}

/** One field of the instrument file, drawn from its schema; a change is written into the file at once. */
export function FileField({ project, schema, path }: FileFieldProps) {
  const { design, answer } = useStore(project.state);
  const parts = path.split('.');
  const field = schemaAt(schema, parts);
  if (field === null || design === null) return null;
  const name = words.fields.names[path] ?? parts.at(-1)!;
  const value = valueAt(design.instrument, parts);
  const set = (next: string | number | boolean): void => void project.set(parts, next);
  if (field.enum) {
    const choices = field.enum.map((choice) => ({ value: String(choice), text: String(choice) }));
    return (
      <ChoiceField
        name={name}
        hint={field.description ?? ''}
        value={String(value)}
        choices={choices}
        onChange={set}
      />
    );
  }
  if (typeof value !== 'number') return null;
  const problem = answer?.ok === false ? problemOf(answer.problems, path) : undefined;
  return <NumberField name={name} schema={field} value={value} problem={problem} onChange={set} />;
}
