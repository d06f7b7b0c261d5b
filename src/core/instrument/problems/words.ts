import type { FieldSchema } from '../schema/fieldSchema.ts';
import { UNSEEN_MARKS } from '../schema/seenText.ts';

/** Longest piece of the maker's own text that an error repeats. [characters] */
const LONGEST_QUOTE = 60;

/** A number with six figures at most, as a maker would write it. */
export function figure(value: number): string {
  return String(Number(value.toPrecision(6)));
}

/** A number with its unit; `-` is no unit. */
export function withUnit(value: number | string, unit: string | undefined): string {
  return unit === undefined || unit === '-' ? String(value) : `${value} ${unit}`;
}

/** The text on one line, with what cannot be seen spelt out. */
export function spelt(text: string): string {
  return text.replace(UNSEEN_MARKS, (mark) => `\\u${mark.charCodeAt(0).toString(16).padStart(4, '0')}`);
}

/** The same between quotation marks, shortened. */
export function quoted(text: string): string {
  const short = text.length > LONGEST_QUOTE ? `${text.slice(0, LONGEST_QUOTE - 3)}...` : text;
  return `"${spelt(short)}"`;
}

/** A value of the file as an error shows it. */
export function shown(value: unknown, unit?: string): string {
  if (value === undefined) return 'nothing';
  if (value === null) return 'no value';
  if (typeof value === 'number') return withUnit(value, unit);
  if (typeof value === 'string') return `the text ${quoted(value)}`;
  if (Array.isArray(value)) return `a list of ${value.length}`;
  return typeof value === 'object' ? 'a group of fields' : String(value);
}

/** `a, b or c`. */
export function either(words: readonly string[]): string {
  return words.length < 2 ? words.join('') : `${words.slice(0, -1).join(', ')} or ${words.at(-1)!}`;
}

/** Names a group may have: its own fields, or those that pick its kind. */
export function namesOf(schema: FieldSchema): readonly string[] {
  if (schema.properties) return Object.keys(schema.properties);
  return [...new Set((schema.oneOf ?? []).flatMap((entry) => Object.keys(entry.properties ?? {})))];
}

function numberRange(schema: FieldSchema, isWhole: boolean): string {
  const { minimum, maximum, exclusiveMaximum, unit } = schema;
  const top = exclusiveMaximum === undefined ? `to ${maximum}` : `to below ${exclusiveMaximum}`;
  return withUnit(`${isWhole ? 'a whole number' : 'a number'} from ${minimum} ${top}`, unit);
}

/** How a text must look; one without lengths has a form of its own, which its description says. */
function textForm({ minLength, maxLength, description = 'A text' }: FieldSchema): string {
  if (minLength === undefined)
    return `${description[0]!.toLowerCase()}${description.slice(1).replace(/[.]$/, '')}`;
  return `text of ${minLength} to ${maxLength} characters on one line`;
}

function oneType(type: string, schema: FieldSchema): string {
  switch (type) {
    case 'integer':
    case 'number':
      return numberRange(schema, type === 'integer');
    case 'string':
      return textForm(schema);
    case 'boolean':
      return 'true or false';
    case 'array':
      return `a list of ${schema.minItems ?? 0} to ${schema.maxItems}, each ${allowedText(schema.items ?? {})}`;
    case 'null':
      return 'null';
    default:
      return `fields of its own: ${namesOf(schema).join(', ')}`;
  }
}

/** What a field may be, with range and unit. */
export function allowedText(schema: FieldSchema): string {
  if (schema.const !== undefined) return String(schema.const);
  if (schema.enum) return withUnit(either(schema.enum.map(String)), schema.unit);
  const types = [schema.type ?? 'object'].flat();
  return either(types.map((type) => oneType(type, schema)));
}
