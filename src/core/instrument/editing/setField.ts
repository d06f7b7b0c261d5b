import { isMap, isScalar, parseDocument } from 'yaml';
import { lineBreak, newFields, valueChange, type Change, type FieldMap, type Pair } from './sectionFields.ts';
import { contentEnd, lineEnd } from './topSection.ts';

/** What a field may be set to: `undefined` takes the field away, so that its default holds again. */
export type FieldValue = FieldLeaf | readonly FieldValue[] | { readonly [name: string]: FieldValue };
type FieldLeaf = string | number | boolean | null | undefined;

const isGroup = (value: FieldValue): value is { readonly [name: string]: FieldValue } =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

/** A value on one line, as YAML reads it; for a file that is JSON, as JSON does. */
function flowText(value: FieldValue, isJson: boolean): string {
  if (isJson) return JSON.stringify(value);
  if (Array.isArray(value)) return `[${value.map((part: FieldValue) => flowText(part, false)).join(', ')}]`;
  if (!isGroup(value)) return typeof value === 'string' && isPlain(value) ? value : JSON.stringify(value);
  const fields = Object.entries(value).filter(([, part]) => part !== undefined);
  return `{ ${fields.map(([name, part]) => `${name}: ${flowText(part, false)}`).join(', ')} }`;
}

/** Words that YAML reads as a string without quotes. */
function isPlain(text: string): boolean {
  return /^[a-z][a-z0-9-]*$/.test(text) && !/^(?:true|false|null|yes|no|on|off|y|n)$/.test(text);
}

/** The groups that are not there yet, round the value. */
function nested(path: readonly string[], value: FieldValue): FieldValue {
  return path.reduceRight<FieldValue>((inner, name) => ({ [name]: inner }), value);
}

/** Takes a field away: its lines where it has its own, its stretch between commas where it shares one. */
function removal(text: string, map: FieldMap, pair: Pair): Change {
  const pairs = map.items as Pair[];
  const at = pairs.indexOf(pair);
  const end = contentEnd(text, pair);
  if (map.flow) {
    const next = pairs[at + 1];
    if (next) return { from: pair.key.range[0], to: next.key.range[0], text: '' };
    const before = pairs[at - 1];
    return { from: before ? contentEnd(text, before) : pair.key.range[0], to: end, text: '' };
  }
  // The last field of a group leaves an empty group behind, which is what a group without a value means.
  if (pairs.length === 1) return { from: pair.key.range[0], to: end, text: '{}' };
  const from = text.lastIndexOf('\n', pair.key.range[0]) + 1;
  const to = lineEnd(text, end);
  return {
    from,
    to: Math.min(text.length, to + (text[to] === undefined ? 0 : lineBreak(text).length)),
    text: '',
  };
}

function changeAt(text: string, path: readonly string[], value: FieldValue, isJson: boolean): Change | null {
  const { contents } = parseDocument(text, { version: '1.2', schema: 'core' });
  let map = contents as unknown;
  for (const [depth, name] of path.entries()) {
    if (!isMap(map)) return null;
    const group = map as FieldMap;
    const pair = (group.items as Pair[]).find(({ key }) => isScalar(key) && key.value === name);
    const rest = path.slice(depth + 1);
    if (!pair)
      return value === undefined
        ? null
        : addition(text, group, name, flowText(nested(rest, value), isJson), isJson);
    const isLast = rest.length === 0;
    if (isLast && value === undefined) return removal(text, group, pair);
    if (!isLast && value === undefined && !isMap(pair.value)) return null;
    if (isLast || !isMap(pair.value)) {
      const put = flowText(nested(rest, value), isJson);
      const isBlock = isMap(pair.value) && !pair.value.flow;
      const change = valueChange(text, pair, put);
      // A group on lines of its own gives way to one line behind its name.
      return isBlock
        ? { ...change, from: text.indexOf(':', pair.key.range[1]) + 1, text: ` ${put}` }
        : change;
    }
    map = pair.value;
  }
  return null;
}

/** A field that was not there; a group without fields has no place to put it behind. */
function addition(text: string, map: FieldMap, name: string, put: string, isJson: boolean): Change {
  if (map.items.length === 0) {
    const quoted = isJson ? JSON.stringify(name) : name;
    return { from: map.range[0], to: map.range[1], text: `{ ${quoted}: ${put} }` };
  }
  return newFields(text, map, [[isJson ? JSON.stringify(name) : name, put]]);
}

/**
 * An instrument file with one field set, or taken away; every other character stays as it was, comments too.
 *
 * The result may be out of range or contradict itself: what is typed is kept, and reading it says what is wrong.
 *
 * @param text - The file; anything that is YAML with fields at its top, good or not. [characters]
 * @param path - Names from the top, such as `['disc', 'bore', 'diameterMm']`; n ≥ 1
 * @param value - New value; groups that are missing on the way are made.
 * @returns The text; the same one where there is nothing to take away, or no group to put the field into.
 * @check src/core/instrument/editing/setField.test.ts
 */
export function setField(text: string, path: readonly string[], value: FieldValue): string {
  const mark = text.startsWith('\ufeff') ? '\ufeff' : '';
  const plain = text.slice(mark.length);
  const change = changeAt(plain, path, value, plain.trimStart().startsWith('{'));
  if (change === null) return text;
  return mark + plain.slice(0, change.from) + change.text + plain.slice(change.to);
}

/** One field of the instrument file and what it shall be. */
export interface FieldEdit {
  /** Names from the top. n ≥ 1 */
  readonly path: readonly string[];
  /** Left out where the field is taken away. */
  readonly value?: FieldValue;
}

/**
 * An instrument file with several fields set, one after another.
 *
 * @param text - The file, as `setField` takes it. [characters]
 * @check src/app/usefulEdits.test.ts
 */
export function setFields(text: string, edits: readonly FieldEdit[]): string {
  return edits.reduce((now, { path, value }) => setField(now, path, value), text);
}
