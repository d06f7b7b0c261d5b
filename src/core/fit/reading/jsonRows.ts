import { columnRows } from './columnRows.ts';
import { shown, type RawFile } from './rawRows.ts';
import type { ReadingHints, Repair } from './recording.ts';
import type { TextLine } from './textLines.ts';

/** True when a file holds one JSON object a line, or one array of them. */
export function areJson(lines: readonly TextLine[]): boolean {
  const objects = lines.filter(({ text }) => /^\[?\s*[{[]/.test(text)).length;
  return objects > 0 && objects >= 0.5 * lines.length;
}

/** Names and values of an object; a list becomes one value an item, a group its members. */
function flat(value: unknown, name: string, into: Map<string, string>): void {
  if (Array.isArray(value)) {
    for (const [i, item] of value.entries()) flat(item, `${name || 'a'}${i}`, into);
  } else if (typeof value === 'object' && value !== null) {
    for (const [key, item] of Object.entries(value)) flat(item, key, into);
  } else if (typeof value === 'number' || typeof value === 'string') {
    into.set(name, String(value));
  } else if (typeof value === 'boolean') {
    into.set(name, value ? '1' : '0');
  } else {
    into.set(name, '');
  }
}

function parsed(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    return undefined;
  }
}

/** Objects of a file, each with its line: one a line, or all in one array over the whole file. */
function objectsOf(
  lines: readonly TextLine[],
  refuse: (line: TextLine) => void,
): { line: TextLine; value: unknown }[] {
  const whole = lines[0]!.text.startsWith('[') ? parsed(lines.map(({ text }) => text).join('\n')) : undefined;
  if (Array.isArray(whole) && whole.some((item) => typeof item === 'object')) {
    return whole.map((value: unknown) => ({ line: lines[0]!, value }));
  }
  return lines.flatMap((line) => {
    const value = parsed(line.text.replace(/,$/, ''));
    if (typeof value === 'object' && value !== null) return [{ line, value }];
    refuse(line);
    return [];
  });
}

/** Rows of JSON Lines: the members of each object are its columns. */
export function jsonRows(file: string, lines: readonly TextLine[], hints: ReadingHints): RawFile {
  const repairs: Repair[] = [];
  const objects = objectsOf(lines, (line) =>
    repairs.push({
      file,
      line: line.number,
      kind: 'rubbish',
      what: `Left out what is no JSON object: "${shown(line.text)}".`,
    }),
  );
  const members = objects.map(({ line, value }) => {
    const map = new Map<string, string>();
    flat(value, '', map);
    return { line, map };
  });
  const labels = [...(members[members.length >> 1]?.map.keys() ?? [])];
  // One JSON line is many columns: told to the reader of columns as such.
  const rows = members.map(({ line, map }) => ({
    ...line,
    text: labels.map((name) => map.get(name) ?? '').join('\u001f'),
  }));
  const split = (text: string): string[] => text.split('\u001f');
  const read = columnRows(file, rows, { split, width: labels.length, labels }, hints);
  return { ...read, repairs: [...repairs, ...read.repairs], lines: lines.length };
}
