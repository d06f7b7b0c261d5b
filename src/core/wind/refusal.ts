import { type Problem, VanewrightError } from '../error/index.ts';

/** Nothing was given where at least one reading is needed. */
export function noReadings(where: string): VanewrightError {
  return new VanewrightError({
    code: 'wind/no-readings',
    what: 'There is nothing to work with.',
    where,
    got: '0 readings',
    allowed: '1 reading or more',
    fix: 'Widen the time span, or check that the record is not empty and that not every reading is calm.',
  });
}

/** A reading that is no number, or lies outside what the formula is defined for. */
export function badReading(where: string, got: unknown, allowed: string): VanewrightError {
  return new VanewrightError({
    code: 'wind/bad-reading',
    what: 'A reading is not a usable number.',
    where,
    got: String(got),
    allowed,
    fix: 'Pass null for what could not be read, and leave fillers such as -99.99 or 999 out of the sums.',
  });
}

/** A setting chosen by the maker or the caller that cannot work. */
export function badSetting(where: string, got: unknown, allowed: string, fix: string): VanewrightError {
  return new VanewrightError({
    code: 'wind/bad-setting',
    what: 'A setting of the wind arithmetic cannot work.',
    where,
    got: String(got),
    allowed,
    fix,
  });
}

/** Two lists that belong together, reading by reading, but are not equally long. */
export function unequalLengths(where: string, first: number, second: number): VanewrightError {
  return new VanewrightError({
    code: 'wind/unequal-lengths',
    what: 'Two lists that belong together have different lengths.',
    where,
    got: `${first} and ${second} readings`,
    allowed: 'the same number in both',
    fix: `Give ${Math.min(first, second)} readings in both, pair by pair.`,
  });
}

/** A reading whose time does not follow the one before. */
export function timeNotRising(where: string, previousMs: number, atMs: number): VanewrightError {
  return new VanewrightError({
    code: 'wind/time-not-rising',
    what: 'A reading is not later than the one before it.',
    where,
    got: `${atMs} ms after ${previousMs} ms`,
    allowed: `later than ${previousMs} ms`,
    fix: 'Sort the readings by time and keep one of each instant.',
  });
}

/** Fewer readings than the estimate can stand on. */
export function tooFewReadings(where: string, got: number, least: number, why: string): VanewrightError {
  return new VanewrightError({
    code: 'wind/too-few-readings',
    what: `There are too few readings: ${why}.`,
    where,
    got: `${got} readings`,
    allowed: `${least} readings or more`,
    fix: `Record at least ${least} different readings.`,
  });
}

/** Every reading is the same, so that nothing can be fitted. */
export function noVariation(where: string, value: number, unit: string): VanewrightError {
  return new VanewrightError({
    code: 'wind/no-variation',
    what: 'Every reading is the same, so nothing can be fitted to them.',
    where,
    got: `${value} ${unit} every time`,
    allowed: 'at least two different values',
    fix: 'Check for a stuck sensor, or take readings over a wider range.',
  });
}

/** Two sums that were not made for the same layout cannot be joined. */
export function differentLayout(where: string, got: string, allowed: string): VanewrightError {
  return new VanewrightError({
    code: 'wind/different-layout',
    what: 'Two sums with different layouts cannot be joined.',
    where,
    got,
    allowed,
    fix: `Make both with ${allowed}.`,
  });
}

/** Number that is finite and at least `least`, or a refusal that names the place. */
export function requireAtLeast(value: number, least: number, where: string, unit: string): void {
  if (!(Number.isFinite(value) && value >= least)) {
    throw badReading(where, value, `a finite number, ${least} ${unit} or more`);
  }
}

/** Number that is finite and above zero, or a refusal that names the place. */
export function requirePositive(value: number, where: string, unit: string): void {
  if (!(Number.isFinite(value) && value > 0)) {
    throw badReading(where, value, `a finite number above 0 ${unit}`);
  }
}

/** Finite number, or a refusal that names the place. */
export function requireFinite(value: number, where: string, unit: string): void {
  if (!Number.isFinite(value)) throw badReading(where, value, `a finite number ${unit}`);
}

/** Whole number of at least `least`, or a refusal that names the place and proposes `proposal`. */
export function requireCount(value: number, least: number, where: string, proposal: number): void {
  if (Number.isSafeInteger(value) && value >= least) return;
  throw badSetting(where, value, `a whole number, ${least} or more`, `Use ${proposal}.`);
}

/** A caution that goes with a result which can be used with care. */
export type Caution = Problem;
