import { showNumber } from '../../units/index.ts';

/** Resistance as a catalogue prints it, with k or M. [ohm] */
export function showOhm(ohm: number): string {
  if (ohm >= 1e6) return `${showNumber(ohm / 1e6, 2)} Mohm`;
  return ohm >= 1e3 ? `${showNumber(ohm / 1e3, 2)} kohm` : `${showNumber(ohm, 1)} ohm`;
}
