import type { FieldSchema } from '../schema/fieldSchema.ts';
import { figure, withUnit } from './words.ts';
import { unitTable, type UnitName } from './unitTable.ts';

/** A number the maker may have meant. */
export interface Hint {
  /** Why: `0.08 m is 80 mm`. */
  readonly reason: string;
  /** The value in the field's own unit. */
  readonly value: number;
}

/** Whether a number fits the field. */
export function fits(value: number, schema: FieldSchema): boolean {
  const { minimum = -Infinity, maximum = Infinity, exclusiveMaximum = Infinity } = schema;
  const isWholeEnough = schema.type !== 'integer' || Number.isInteger(value);
  const isListed = schema.enum === undefined || schema.enum.includes(value);
  return isWholeEnough && isListed && value >= minimum && value <= maximum && value < exclusiveMaximum;
}

/** Six figures at most, so that 0.07 m is 70 mm and not 70.00000000000001. */
function neat(value: number): number {
  return Number(value.toPrecision(6));
}

/** `80000 mm is 80 m`, for a value that is a thousand of its unit too large; `0.08 m is 80 mm` otherwise. */
function reasonFor(written: number, from: UnitName, unit: string, units: readonly UnitName[]): string {
  const larger = units.find(({ factor }) => Math.abs(factor * from.factor - 1) < 1e-9);
  if (from.factor < 1 && larger) {
    return `${withUnit(figure(written), unit)} is ${figure(written * from.factor)} ${larger.names[0]}`;
  }
  return `${figure(written)} ${from.names[0]} is ${withUnit(figure(neat(written * from.factor)), unit)}`;
}

/** A value the field often has: its default, its example, or the middle of its range by ratio. */
function typicalOf({ default: usual, examples, minimum = 0, maximum = 0 }: FieldSchema): number {
  const known = [usual, ...(examples ?? [])].find(
    (value): value is number => typeof value === 'number' && value > 0,
  );
  return known ?? Math.sqrt(Math.max(minimum, maximum * 1e-6) * maximum);
}

/** A second guess is told only when it is within this ratio of a typical value. [-] */
const FAR_FETCHED = 3;

/** Guesses a maker is likely to have meant: the one most like a typical value, and another if it is like it too. */
export function likely(hints: readonly Hint[], schema: FieldSchema): readonly Hint[] {
  const typical = typicalOf(schema);
  const unlikeness = ({ value }: Hint): number => Math.abs(Math.log(Math.abs(value) / typical));
  return [...hints]
    .sort((a, b) => unlikeness(a) - unlikeness(b))
    .filter((hint, i) => i === 0 || (i === 1 && unlikeness(hint) < Math.log(FAR_FETCHED)));
}

/**
 * Numbers that would fit if the written one had been meant in another unit; likeliest first, two at most.
 *
 * @param written - A finite number that does not fit the field, as if in the field's unit.
 */
export function unitHints(written: number, schema: FieldSchema): readonly Hint[] {
  const { unit } = schema;
  const units = unit === undefined ? undefined : unitTable[unit];
  if (unit === undefined || units === undefined || written === 0) return [];
  const hints = units
    .filter(({ factor }) => factor !== 1)
    .map((from) => ({ from, value: neat(written * from.factor) }))
    .filter(({ value }) => fits(value, schema))
    .map(({ from, value }) => ({ value, reason: reasonFor(written, from, unit, units) }));
  return likely(hints, schema);
}
