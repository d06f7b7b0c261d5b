import type { FieldSchema, FieldValue } from '../../core/instrument/index.ts';
import { useStore } from '../project/store.ts';
import type { PageParts } from '../shell/pageParts.ts';
import { words } from '../words/en.ts';
import { ChoiceField } from './ChoiceField.tsx';
import { FileField, standing } from './FileField.tsx';
import { entryOf, groupOfKind, kindName } from './fieldValue.ts';
import { schemaAt } from './schemaField.ts';

interface GroupFieldProps extends Pick<PageParts, 'project' | 'schema'> {
  /** Path of a group that has kinds, such as `disc.bore`. */
  readonly path: string;
  /** Kinds that may be chosen; every kind of the schema where left out. */
  readonly kinds?: readonly string[];
  /** The kind that holds where the file leaves the group out. */
  readonly usual?: string | undefined;
  /** Fields that are shown at once; the others lie behind a fold. All where left out. */
  readonly first?: readonly string[];
  /** Hears of a change of kind instead of the file, where more than the group changes with it. */
  onKind?(group: Record<string, unknown>): void;
}

/** Whether a field of a group is one that a page can show: a number, a choice, yes or no, a line or a list. */
function isShown(field: FieldSchema): boolean {
  const types = [field.type ?? []].flat();
  return !types.includes('object') && field.const === undefined && !field.oneOf;
}

/** A group with kinds: choosing another kind writes the whole group. */
export function GroupField({ project, schema, path, kinds, usual, first, onKind }: GroupFieldProps) {
  const state = useStore(project.state);
  const parts = path.split('.');
  const group = schemaAt(schema, parts);
  const name = group && kindName(group);
  if (!group || !name) return null;
  const { comesTo } = standing(state, parts, group);
  const now = (comesTo ?? {}) as Readonly<Record<string, unknown>>;
  const kind = String(now[name] ?? usual ?? '');
  const entry = entryOf(group, kind);
  const choose = (next: string): void => {
    const whole = groupOfKind(group, next, now);
    if (onKind) onKind(whole);
    else void project.set(parts, whole as FieldValue);
  };
  const entries = (group.oneOf ?? []).filter(
    ({ properties }) => !kinds || kinds.includes(String(properties?.[name]?.const)),
  );
  const shown = Object.entries(entry?.properties ?? {}).filter(([, field]) => isShown(field));
  const isFirst = ([field]: readonly [string, FieldSchema]): boolean => !first || first.includes(field);
  const draw = ([field, own]: readonly [string, FieldSchema]) => (
    <FileField key={field} project={project} schema={schema} path={`${path}.${field}`} own={own} />
  );
  const rest = shown.filter((field) => !isFirst(field));
  return (
    <>
      <ChoiceField
        name={words.fields.names[`${path}.${name}`] ?? path}
        hint={entry?.properties?.[name]?.description ?? group.description ?? ''}
        value={kind}
        choices={entries.map(({ properties }) => {
          const value = String(properties![name]!.const);
          return { value, text: words.fields.choice(`${path}.${name}`, value) };
        })}
        onChange={choose}
      />
      {shown.filter(isFirst).map(draw)}
      {rest.length === 0 ? null : (
        <details>
          <summary>{words.fields.more}</summary>
          <div class="fields">{rest.map(draw)}</div>
        </details>
      )}
    </>
  );
}
