import type { FieldSchema } from '../schema/fieldSchema.ts';
import { fits, unitHints, type Hint } from './unitHint.ts';
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

/** What the figures may mean: a comma is a decimal sign, or parts thousands where three figures follow it. */
function readings(figures: string): readonly number[] {
  const decimal = Number(figures.replace(',', '.'));
  const grouped = /^[+-]?\d{1,3}(,\d{3})+(\.\d+)?$/.test(figures) ? Number(figures.replaceAll(',', '')) : NaN;
  return [decimal, grouped].filter(Number.isFinite);
}

function reasonFor(text: string, hasComma: boolean, isOwnUnit: boolean, value: number, unit: string): string {
  if (!isOwnUnit) return `${quoted(text)} is ${withUnit(figure(value), unit)}`;
  return hasComma ? 'the decimal sign is a point' : 'the unit is in the name of the field';
}

/**
 * Numbers that a text in a number's place may mean: `80 mm`, `8 cm`, `80,5`, `"80"`.
 *
 * @returns What fits the field, best first; a text that would fit in a unit a maker mistook counts too; may be none.
 */
export function numberTextHints(text: string, schema: FieldSchema): readonly Hint[] {
  const match = NUMBER_AND_UNIT.exec(text.trim());
  const { unit = '-' } = schema;
  const factor = factorOf(match?.[2]?.trim(), unit);
  if (!match || factor === null) return [];
  const figures = match[1]!;
  const values = readings(figures).map((value) => Number((value * factor).toPrecision(12)));
  const fitting = values.filter((value) => fits(value, schema));
  if (fitting.length === 0) return values.flatMap((value) => unitHints(value, schema));
  return fitting.map((value) => ({
    value,
    reason: reasonFor(text.trim(), figures.includes(','), factor === 1, value, unit),
  }));
}
