import * as z from 'zod';
import { SEEN_TEXT } from './seenText.ts';

/** What an editor, an error and the reference page say about a field besides its range. */
export interface FieldNotes {
  /** What the field is, in plain words. */
  readonly meaning: string;
  /** A value that works, named in errors where the field has no default. */
  readonly example?: string | number;
}

function noteMeta({ meaning, example }: FieldNotes): { description: string; examples?: (string | number)[] } {
  return { description: meaning, ...(example === undefined ? {} : { examples: [example] }) };
}

/** A number with a unit; both ends of the range are allowed. */
export function measure(unit: string, least: number, most: number, notes: FieldNotes): z.ZodNumber {
  return z
    .number()
    .min(least)
    .max(most)
    .meta({ ...noteMeta(notes), unit });
}

/** A whole number with a unit; both ends of the range are allowed. */
export function whole(unit: string, least: number, most: number, notes: FieldNotes): z.ZodInt {
  return z
    .int()
    .min(least)
    .max(most)
    .meta({ ...noteMeta(notes), unit });
}

/** A direction or turn: 0 or more, below one turn. [deg] */
export function heading(meaning: string): z.ZodNumber {
  return z.number().min(0).lt(360).meta({ description: meaning, unit: 'deg' });
}

/** One line of text a maker types. */
export function line(longest: number, notes: FieldNotes): z.ZodString {
  return z.string().min(1).max(longest).regex(SEEN_TEXT).meta(noteMeta(notes));
}

/** One of a few names. */
export function choice<const Names extends readonly [string, ...string[]]>(names: Names, notes: FieldNotes) {
  return z.enum(names).meta(noteMeta(notes));
}

/** One of a few numbers. */
export function oneOf<const Numbers extends readonly [number, ...number[]]>(
  numbers: Numbers,
  unit: string,
  notes: FieldNotes,
) {
  return z.literal(numbers).meta({ ...noteMeta(notes), unit });
}

/** A field whose default comes from other fields; `rule` says how, and `resolveInstrument` does it. */
export function derived<Field extends z.ZodType>(field: Field, rule: string): z.ZodOptional<Field> {
  return field.optional().meta({ ...field.meta(), defaultRule: rule });
}

/** A field that may be `null`, which is also its default; `meaningOfNull` says what that does. */
export function nullable<Field extends z.ZodType>(field: Field, meaningOfNull: string) {
  return field
    .nullable()
    .default(null)
    .meta({ ...field.meta(), defaultRule: `null, for ${meaningOfNull}` });
}
