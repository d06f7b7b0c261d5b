import { showSignificant } from '../../units/index.ts';

/** A time in the unit that reads best: `40 s`, `3.2 h`, `5 days`. [h] */
export function showHours(hours: number): string {
  if (hours >= 48) return `${showSignificant(hours / 24, 2)} days`;
  if (hours >= 1) return `${showSignificant(hours, 2)} h`;
  if (hours >= 1 / 60) return `${showSignificant(60 * hours, 2)} min`;
  return `${showSignificant(3600 * hours, 2)} s`;
}
