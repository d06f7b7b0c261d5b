import type { FieldSchema, FieldValue } from '../../core/instrument/index.ts';
import { useStore } from '../project/store.ts';
import type { PageParts } from '../shell/pageParts.ts';
import { words } from '../words/en.ts';
import { FileField } from './FileField.tsx';
import { firstGroup, valueAt } from './fieldValue.ts';
import { ruleText, schemaAt } from './schemaField.ts';

interface OptionalGroupProps extends Pick<PageParts, 'project' | 'schema'> {
  /** Path of a group that the file may leave out, such as `head.penumbra`. */
  readonly path: string;
}

/** A group that is there or not: added with values to begin from, or left out whole. */
export function OptionalGroup({ project, schema, path }: OptionalGroupProps) {
  const { fields } = useStore(project.state);
  const parts = path.split('.');
  const group: FieldSchema | null = schemaAt(schema, parts);
  if (!group) return null;
  const name = words.fields.names[path] ?? path;
  const written = valueAt(fields, parts);
  const isThere = written !== undefined && written !== null;
  return (
    <div class="fields">
      <h3>{name}</h3>
      <p class="hint">
        {group.description} {ruleText(group) === '' ? '' : words.fields.byDefault(ruleText(group))}
      </p>
      {isThere
        ? Object.keys(group.properties ?? {}).map((field) => (
            <FileField key={field} project={project} schema={schema} path={`${path}.${field}`} />
          ))
        : null}
      <div>
        <button
          type="button"
          onClick={() => void project.set(parts, isThere ? undefined : (firstGroup(group) as FieldValue))}
        >
          {isThere ? words.fields.remove(name) : words.fields.add(name)}
        </button>
      </div>
    </div>
  );
}
