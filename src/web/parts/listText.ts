import type { FieldSchema } from '../../core/instrument/index.ts';

/** A list of the file as one types it: items with commas or blanks between, rows with semicolons. */
export type ListValue = readonly (string | number | readonly number[])[];

/** A list as text. */
export function listText(value: unknown): string {
  if (!Array.isArray(value)) return '';
  const isOfRows = value.some(Array.isArray);
  return isOfRows ? value.map((row) => [row].flat().join(' ')).join('; ') : value.join(', ');
}

/** Whether the items of a list are numbers, rows of numbers or words. */
function sortOf({ items }: FieldSchema): 'rows' | 'numbers' | 'words' {
  if (items?.type === 'array') return 'rows';
  return items?.type === 'number' || items?.type === 'integer' ? 'numbers' : 'words';
}

const itemsOf = (text: string): string[] => text.split(/[\s,]+/).filter((item) => item !== '');

/**
 * The list that someone typed; `null` where its items are not of the right sort or its count is wrong.
 */
export function readList(text: string, schema: FieldSchema): ListValue | null {
  const sort = sortOf(schema);
  const { minItems = 1, maxItems = Infinity } = schema;
  const list: ListValue =
    sort === 'rows'
      ? text
          .split(';')
          .map(itemsOf)
          .filter((row) => row.length > 0)
          .map((row) => row.map(Number))
      : sort === 'numbers'
        ? itemsOf(text).map(Number)
        : itemsOf(text);
  if (list.length < minItems || list.length > maxItems) return null;
  if (list.flat().some((item) => typeof item === 'number' && !Number.isFinite(item))) return null;
  const ofRow = schema.items?.minItems;
  if (
    sort === 'rows' &&
    ofRow !== undefined &&
    list.some((row) => (row as readonly number[]).length !== ofRow)
  )
    return null;
  return list;
}
