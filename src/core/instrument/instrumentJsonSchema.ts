import { fieldSchema } from './schema/fieldSchema.ts';

type Json = Record<string, unknown>;

/** Where these keys hold names of fields, not words of JSON Schema. */
const NAMES_BELOW = new Set(['properties']);

/** What an editor shows: the meaning, the unit, and how a default follows from other fields. */
function noteOf({ description, unit, defaultRule }: Json): string {
  const inUnit = typeof unit === 'string' && unit !== '-' ? ` [${unit}]` : '';
  const rule = typeof defaultRule === 'string' ? ` Default: ${defaultRule}.` : '';
  return `${String(description)}${inUnit}${rule}`;
}

function forEditors(value: unknown, holdsNames = false): unknown {
  if (Array.isArray(value)) return value.map((part) => forEditors(part));
  if (typeof value !== 'object' || value === null) return value;
  const parts = Object.entries(value).map(([key, part]): [string, unknown] => [
    key,
    forEditors(part, !holdsNames && NAMES_BELOW.has(key)),
  ]);
  const copy: Json = Object.fromEntries(parts);
  if (holdsNames || typeof copy.description !== 'string') return copy;
  return { ...copy, description: noteOf(copy) };
}

/**
 * JSON Schema of the instrument file, for completion and checks in editors.
 *
 * It says what each field may be; what fields must be together (a hub inside the rim) only the reader checks.
 *
 * @returns A plain object of draft 2020-12; `unit` and `defaultRule` are notes of ours that validators pass over.
 * @check src/core/instrument/instrumentJsonSchema.test.ts, with an independent validator
 */
export function instrumentJsonSchema(): Readonly<Record<string, unknown>> {
  const { $schema, ...schema } = forEditors(fieldSchema()) as Json;
  return {
    $schema,
    title: 'vanewright instrument file',
    description:
      'One direction-sensing instrument: what it must do, its disc, head, circuit, controller, cups and site.',
    ...schema,
  };
}
