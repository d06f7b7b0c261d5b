import { InvalidArgumentError } from 'commander';
import type { Place } from '../../core/fit/index.ts';

const PLAIN = /^[+-]?\d+([.]\d+)?$/;

/** Reads a number with a sign, both ends allowed. */
export function numberFrom(least: number, most: number, unit: string): (text: string) => number {
  return (text) => {
    const value = Number(text);
    if (PLAIN.test(text) && value >= least && value <= most) return value;
    throw new InvalidArgumentError(`Allowed: a number from ${least} to ${most} ${unit}.`);
  };
}

/** Reads `53.55,10.01`: latitude and longitude, north and east positive. */
export function placeDeg(text: string): Place {
  const [north = '', east = '', ...more] = text.split(',').map((one) => one.trim());
  if (PLAIN.test(north) && PLAIN.test(east) && more.length === 0) {
    return { latitudeDeg: Number(north), longitudeDeg: Number(east) };
  }
  throw new InvalidArgumentError('Allowed: latitude and longitude in degrees, such as 53.55,10.01.');
}

/** Reads an instant; without its zone, summer time would turn the sun by 15 degrees. */
export function instant(text: string): string {
  if (/^\d{4}-\d\d-\d\dT.*(Z|[+-]\d\d:?\d\d)$/.test(text) && !Number.isNaN(Date.parse(text))) return text;
  throw new InvalidArgumentError('Allowed: an instant with its zone, such as 2024-05-17T12:30:00+02:00.');
}
