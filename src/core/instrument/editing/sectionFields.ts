import { isMap, isScalar, isSeq, parseDocument, type ParsedNode, type YAMLMap } from 'yaml';
import { contentEnd, lineEnd, withSection } from './topSection.ts';

/** One entry of a list, its values single. */
type Entry = Readonly<Record<string, string | number>>;

/** What to set in one section of a file. */
export interface FieldEdits {
  readonly section: 'site' | 'cups';
  /** New values by field. */
  readonly set: Readonly<Record<string, number>>;
  /** An entry to add at the end of a list of the section; `null` for none. */
  readonly append: { readonly list: string; readonly entry: Entry } | null;
}

/** A stretch of the file with what takes its place. [characters] */
export interface Change {
  readonly from: number;
  readonly to: number;
  readonly text: string;
}

export type Pair = { key: ParsedNode; value: ParsedNode | null };
export type FieldMap = YAMLMap.Parsed & { range: [number, number, number] };

const entryText = (entry: Entry): string =>
  `{ ${Object.entries(entry)
    .map(([name, value]) => `${name}: ${JSON.stringify(value)}`)
    .join(', ')} }`;

/** The file with fields of one section set; every other character stays as it was. */
export function withFields(text: string, edits: FieldEdits): string {
  const mark = text.startsWith('\ufeff') ? '\ufeff' : '';
  const plain = text.slice(mark.length);
  const { contents } = parseDocument(plain, { version: '1.2', schema: 'core' });
  const pairs = isMap(contents) ? (contents.items as Pair[]) : [];
  const section = pairs.find(({ key }) => isScalar(key) && key.value === edits.section)?.value;
  const isJson = plain.trimStart().startsWith('{');
  if (isJson || !isMap(section) || section.items.length === 0) return wholeSection(text, edits);
  // From the end, so that offsets hold; of two at one place the later comes first and ends up behind.
  const changes = [...changesOf(plain, section as FieldMap, edits)].reverse().sort((a, b) => b.from - a.from);
  return (
    mark + changes.reduce((so, { from, to, text: put }) => so.slice(0, from) + put + so.slice(to), plain)
  );
}

/** The section written anew, with what it held: for JSON, and where there were no fields of its own. */
function wholeSection(text: string, { section, set, append }: FieldEdits): string {
  const document = parseDocument(text.replace(/^\ufeff/, ''), { version: '1.2', schema: 'core' });
  const all = document.toJS() as Record<string, Record<string, unknown> | null | undefined>;
  const value: Record<string, unknown> = { ...all[section], ...set };
  if (append) value[append.list] = [...((value[append.list] as unknown[] | undefined) ?? []), append.entry];
  const lines = Object.entries(value).map(([name, one]) => `  ${name}: ${JSON.stringify(one)}`);
  return withSection(text, { name: section, lines: [`${section}:`, ...lines], value });
}

/** Column at which an offset stands on its line. [characters] */
const indentAt = (text: string, offset: number): string =>
  ' '.repeat(offset - (text.lastIndexOf('\n', offset - 1) + 1));

function* changesOf(text: string, map: FieldMap, { set, append }: FieldEdits): Generator<Change> {
  const pairs = map.items as Pair[];
  const named = (name: string): Pair | undefined =>
    pairs.find(({ key }) => isScalar(key) && key.value === name);
  const added: [string, string][] = [];
  for (const [name, value] of Object.entries(set)) {
    const pair = named(name);
    if (pair) yield valueChange(text, pair, String(value));
    else added.push([name, String(value)]);
  }
  if (append) {
    const pair = named(append.list);
    if (pair) yield listChange(text, pair, entryText(append.entry));
    else added.push([append.list, `[${entryText(append.entry)}]`]);
  }
  if (added.length > 0) yield newFields(text, map, added);
}

/** Another value in the place of a field's own. */
export function valueChange(text: string, { key, value }: Pair, put: string): Change {
  if (value && contentEnd(text, { key, value }) > value.range[0]) {
    return { from: value.range[0], to: contentEnd(text, { key, value }), text: put };
  }
  const from = text.indexOf(':', key.range[1]) + 1;
  return { from, to: from, text: ` ${put}` };
}

function listChange(text: string, pair: Pair, put: string): Change {
  const { value } = pair;
  if (!isSeq(value) || value.items.length === 0) return valueChange(text, pair, `[${put}]`);
  const last = value.items.at(-1) as ParsedNode;
  const end = last.range[0] + text.slice(last.range[0], last.range[1]).trimEnd().length;
  if (value.flow) return { from: end, to: end, text: `, ${put}` };
  const from = lineEnd(text, end);
  const dash = text.lastIndexOf('-', last.range[0] - 1);
  return { from, to: from, text: `${lineBreak(text)}${indentAt(text, dash)}- ${put}` };
}

/** Fields that were not there, behind the last of the section. */
export function newFields(text: string, map: FieldMap, added: readonly [string, string][]): Change {
  const pairs = map.items as Pair[];
  const end = contentEnd(text, pairs.at(-1)!);
  const fields = added.map(([name, value]) => `${name}: ${value}`);
  if (map.flow) return { from: end, to: end, text: fields.map((field) => `, ${field}`).join('') };
  const from = lineEnd(text, end);
  const indent = indentAt(text, pairs[0]!.key.range[0]);
  return { from, to: from, text: fields.map((field) => `${lineBreak(text)}${indent}${field}`).join('') };
}

export const lineBreak = (text: string): string => (text.includes('\r\n') ? '\r\n' : '\n');
