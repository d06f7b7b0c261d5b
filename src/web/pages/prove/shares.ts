import { shownNumber } from '../../parts/numbers.ts';

/** A share as percent. */
export function percent(share: number): string {
  return `${shownNumber(100 * share, 1)} %`;
}

/** A turn rate with its unit. [deg/s] */
export function rate(degPerS: number): string {
  return `${shownNumber(degPerS, degPerS < 10 ? 2 : 0)} °/s`;
}
