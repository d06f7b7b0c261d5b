import { allowedText, withUnit } from './problems/words.ts';
import { fieldSchema, type FieldSchema } from './schema/fieldSchema.ts';
import { FILE_VERSION } from './schema/instrumentSchema.ts';

/** A cell of a table: `|` would end it. */
function cell(text: string): string {
  return text.replaceAll('|', '\\|');
}

/** How a default value is written in the file. */
function written(value: unknown, unit: string | undefined): string {
  if (typeof value === 'number') return withUnit(value, unit);
  if (typeof value !== 'object' || value === null) return String(value);
  const fields = Object.entries(value).map(([name, part]) => `${name}: ${String(part)}`);
  return fields.length === 0 ? 'its own defaults' : `{ ${fields.join(', ')} }`;
}

function defaultText(schema: FieldSchema, isRequired: boolean): string {
  if (isRequired) return 'must be given';
  if (schema.defaultRule !== undefined) return schema.defaultRule;
  return schema.default === undefined ? '' : written(schema.default, schema.unit);
}

/** One field as a row of a table. */
function row(name: string, schema: FieldSchema, isRequired: boolean): string {
  const cells = [
    `\`${name}\``,
    allowedText(schema),
    defaultText(schema, isRequired),
    schema.description ?? '',
  ];
  return `| ${cells.map(cell).join(' | ')} |`;
}

function isGroup(schema: FieldSchema): boolean {
  return schema.properties !== undefined || schema.oneOf !== undefined;
}

/** The single fields of a group as a table, then each of its groups below a heading of its own. */
function group(path: string, schema: FieldSchema, depth: number): readonly string[] {
  const fields = Object.entries(schema.properties ?? {});
  const singles = fields.filter(([, field]) => !isGroup(field));
  const groups = fields.flatMap(([name, field]): [string, FieldSchema][] => {
    if (isGroup(field)) return [[name, field]];
    return field.items && isGroup(field.items) ? [[`${name}[]`, field.items]] : [];
  });
  const isRequired = (name: string): boolean => schema.required?.includes(name) ?? false;
  const table = [
    '| field | what it may be | default | meaning |',
    '| --- | --- | --- | --- |',
    ...singles.map(([name, field]) => row(name, field, isRequired(name))),
    '',
  ];
  return [
    ...(singles.length > 0 ? table : []),
    ...groups.flatMap(([name, field]) =>
      section(path === '' ? name : `${path}.${name}`, field, {
        isRequired: isRequired(name.replace('[]', '')),
        depth,
      }),
    ),
  ];
}

/** A group with its heading; a group with kinds has a table for each. */
function section(
  path: string,
  schema: FieldSchema,
  { isRequired, depth }: { readonly isRequired: boolean; readonly depth: number },
): readonly string[] {
  const heading = `${'#'.repeat(depth)} ${path}`;
  const byDefault = defaultText(schema, isRequired);
  const about = `${schema.description ?? ''}${byDefault === '' ? '' : ` Default: ${byDefault}.`}`;
  const entries = (schema.oneOf ?? []).flatMap((entry) => [
    kindOf(entry),
    '',
    ...group(path, withoutKind(entry), depth + 1),
  ]);
  const own = schema.oneOf ? entries : group(path, schema, depth + 1);
  return [heading, '', isRequired ? `${schema.description ?? ''} Must be given.` : about, '', ...own];
}

/** `kind: fdm`, with what that is. */
function kindOf(entry: FieldSchema): string {
  const [name, kind] = Object.entries(entry.properties ?? {}).find(([, field]) => field.const !== undefined)!;
  return `With \`${name}: ${String(kind.const)}\`. ${kind.description ?? ''}`;
}

function withoutKind(entry: FieldSchema): FieldSchema {
  const rest = Object.entries(entry.properties ?? {}).filter(([, field]) => field.const === undefined);
  return { ...entry, properties: Object.fromEntries(rest) };
}

/**
 * The reference page of the instrument file, every field with range, unit, default and meaning.
 *
 * @returns Markdown, as committed in docs/instrument-file.md.
 * @check src/core/instrument/instrumentFileReference.test.ts: the committed page is this one
 */
export function instrumentFileReference(): string {
  return `${[
    '# The instrument file',
    '',
    '<!-- Made from the schema by `npm run generate`. Change src/core/instrument/schema, not this page. -->',
    '',
    `One file describes one instrument. It is YAML 1.2 (JSON is YAML too) in UTF-8, and its first field is \`vanewright: ${FILE_VERSION}\`.`,
    'Every number is written alone; its unit is in the name of the field. Unknown fields are refused, with the nearest',
    'known name. Two values may contradict each other although each is in range: those rules are told in',
    '[errors/instrument.md](errors/instrument.md). `schema/instrument.schema.json` gives completion in editors.',
    '',
    'The smallest file:',
    '',
    '```yaml',
    `vanewright: ${FILE_VERSION}`,
    'name: my vane',
    'need: { positions: 32 }',
    'disc: { diameterMm: 84, process: { kind: fdm } }',
    '```',
    '',
    ...group('', fieldSchema(), 2),
  ]
    .join('\n')
    .trimEnd()}\n`;
}
