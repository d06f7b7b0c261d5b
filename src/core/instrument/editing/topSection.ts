import { isMap, isScalar, parseDocument, type ParsedNode } from 'yaml';
import { BrokenPromise } from '../../error/index.ts';

/** One section of a file, at the top level. */
export interface Section {
  readonly name: string;
  /** Its lines in YAML, without indent. */
  readonly lines: readonly string[];
  /** Its value, for a file that is JSON. */
  readonly value: unknown;
}

/**
 * The file with one top-level section replaced, or added at its end; every other character stays as it was.
 *
 * @param text - A file that `readInstrument` accepts. [characters]
 */
export function withSection(text: string, section: Section): string {
  const mark = text.startsWith('\ufeff') ? '\ufeff' : '';
  const plain = text.slice(mark.length);
  if (plain.trimStart().startsWith('{')) return mark + inJson(plain, section);
  const end = plain.includes('\r\n') ? '\r\n' : '\n';
  return mark + inYaml(plain, section, end);
}

function inJson(text: string, { name, value }: Section): string {
  const document = parseDocument(text, { version: '1.2', schema: 'core' });
  const fields = { ...(document.toJS() as Record<string, unknown>), [name]: value };
  return `${JSON.stringify(fields, null, 2)}\n`;
}

/** First place after an offset where a line ends. [characters] */
export function lineEnd(text: string, offset: number): number {
  const found = text.slice(offset).search(/\r?\n/);
  return found < 0 ? text.length : offset + found;
}

function inYaml(text: string, { name, lines }: Section, end: string): string {
  const { contents } = parseDocument(text, { version: '1.2', schema: 'core' });
  if (!isMap(contents)) throw new BrokenPromise('A file that was read has no fields at its top.');
  const pairs = contents.items as { key: ParsedNode; value: ParsedNode | null }[];
  const first = pairs[0]!.key.range[0];
  const indent = ' '.repeat(first - (text.lastIndexOf('\n', first - 1) + 1));
  const written = lines.map((line) => indent + line).join(end);
  const old = pairs.find(({ key }) => isScalar(key) && key.value === name);
  if (old) {
    const from = text.lastIndexOf('\n', old.key.range[0]) + 1;
    const to = lineEnd(text, contentEnd(text, old));
    return text.slice(0, from) + written + text.slice(to);
  }
  const at = lineEnd(text, contentEnd(text, pairs.at(-1)!));
  const blank = at === 0 ? '' : `${end}${end}`;
  const rest = text.slice(at);
  return text.slice(0, at) + blank + written + (rest === '' ? end : rest);
}

/** Where the last sign of a field's value stands; comments and blank lines behind it are not its own. [characters] */
export function contentEnd(
  text: string,
  { key, value }: { key: ParsedNode; value: ParsedNode | null },
): number {
  const [from, to] = [key.range[1], value?.range[1] ?? key.range[1]];
  return from + text.slice(from, Math.max(from, to)).trimEnd().length;
}
