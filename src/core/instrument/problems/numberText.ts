import type { FieldSchema } from '../schema/fieldSchema.ts';
import { fits, likely, unitHints, type Hint } from './unitHint.ts';
import { unitTable } from './unitTable.ts';
import { figure, quoted, withUnit } from './words.ts';

const NUMBER_AND_UNIT = /^([+-]?[\d.,]*\d(?:[eE][+-]?\d+)?)\s*([^\d\s].*)?$/;

/** How many house units the named unit is; 1 for none; `null` for a name the table does not have. [-] */
function factorOf(name: string | undefined, unit: string): number | null {
  if (name === undefined) return 1;
  const units = unitTable[unit] ?? [];
  const exact = units.find(({ names }) => names.includes(name));
  const found = exact ?? units.find(({ names }) => names.some((n) => n.toLowerCase() === name.toLowerCase()));
  return found?.factor ?? null;
}

/** What figures may mean, and why they are not written as YAML has numbers; `null` where only the unit is wrong. */
function readings(figures: string): readonly { readonly number: number; readonly reason: string | null }[] {
  const isGrouped = /^[+-]?\d{1,3}(,\d{3})+(\.\d+)?$/.test(figures);
  const decimal = {
    number: Number(figures.replace(',', '.')),
    reason: figures.includes(',') ? 'the decimal sign is a point' : null,
  };
  const grouped = {
    number: isGrouped ? Number(figures.replaceAll(',', '')) : NaN,
    reason: 'thousands are written without a comma',
  };
  return [decimal, grouped].filter(({ number }) => Number.isFinite(number));
}

/**
 * Numbers that a text in a number's place may mean: `80 mm`, `8 cm`, `80,5`, `"80"`.
 *
 * @returns What fits the field, likeliest first; a text that would fit in a unit a maker mistook counts too; may be none.
 */
export function numberTextHints(text: string, schema: FieldSchema): readonly Hint[] {
  const match = NUMBER_AND_UNIT.exec(text.trim());
  const { unit = '-' } = schema;
  const factor = factorOf(match?.[2]?.trim(), unit);
  if (!match || factor === null) return [];
  const found = readings(match[1]!).map(({ number, reason }) => ({
    value: Number((number * factor).toPrecision(12)),
    reason,
  }));
  const fitting = found.filter(({ value }) => fits(value, schema));
  if (fitting.length === 0) return found.flatMap(({ value }) => unitHints(value, schema));
  const hints = fitting.map(({ value, reason }) => ({
    value,
    reason:
      factor === 1
        ? (reason ?? 'the unit is in the name of the field')
        : `${quoted(text.trim())} is ${withUnit(figure(value), unit)}`,
  }));
  return likely(hints, schema);
}
