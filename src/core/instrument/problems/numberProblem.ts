import type { FieldSchema } from '../schema/fieldSchema.ts';
import { pathText, type Path } from '../yaml/places.ts';
import { nearestFitting } from './exampleOf.ts';
import type { FieldProblem } from './fieldProblem.ts';
import { numberTextHints } from './numberText.ts';
import { unitHints, type Hint } from './unitHint.ts';
import { allowedText, either, shown } from './words.ts';

/** `80000 mm is 80 m; did you mean 80?` */
function question(hints: readonly Hint[]): string {
  return `${hints.map(({ reason }) => reason).join(', ')}; did you mean ${either(hints.map(({ value }) => String(value)))}?`;
}

function common(path: Path, schema: FieldSchema, value: unknown) {
  return { path, part: 'value', got: shown(value, schema.unit), allowed: allowedText(schema) } as const;
}

/** Text where a number should be. */
export function textForNumber(path: Path, schema: FieldSchema, text: string): FieldProblem {
  const hints = numberTextHints(text, schema);
  const inUnit = schema.unit === undefined || schema.unit === '-' ? '' : `, in ${schema.unit}`;
  return {
    ...common(path, schema, text),
    code: 'instrument/not-a-number',
    what: `${pathText(path)} is a number, and this is text.`,
    fix:
      hints.length > 0
        ? `Write the number alone: ${either(hints.map(({ value, reason }) => `${value} (${reason})`))}.`
        : `Write the number alone${inUnit}, such as ${nearestFitting(NaN, schema)}.`,
  };
}

/** A number that is no finite number, no whole number where one is needed, or out of range. */
export function numberProblem(path: Path, schema: FieldSchema, value: number): FieldProblem {
  const name = pathText(path);
  const fix = `Set ${name} to ${nearestFitting(value, schema)}.`;
  if (!Number.isFinite(value)) {
    return {
      ...common(path, schema, value),
      code: 'instrument/not-finite',
      what: `${name} is not a finite number.`,
      got: Number.isNaN(value) ? 'not a number (.nan)' : `infinity, or a number too large to hold`,
      fix,
    };
  }
  const hints = unitHints(value, schema);
  const isBroken = types(schema).includes('integer') && !Number.isInteger(value);
  return {
    ...common(path, schema, value),
    code: isBroken ? 'instrument/not-whole' : 'instrument/out-of-range',
    what: isBroken ? `${name} is a whole number.` : `${name} is outside what it can be.`,
    fix: hints.length > 0 ? question(hints) : fix,
  };
}

/** Types a field may have. */
export function types(schema: FieldSchema): readonly string[] {
  return [schema.type ?? []].flat();
}
