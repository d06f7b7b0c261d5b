import type { Degrees } from '../../units/index.ts';

/** How long after power-up an index is met, seen over many power-ups. */
export interface IndexWait {
  /** How it was found: from the model of the site's wind, from a recorded series, or by driving to the index. */
  readonly basis: 'model' | 'recorded' | 'driven';
  /** Heading at which the vane meets the index. [deg], [0, 360) */
  readonly indexDeg: Degrees;
  /** Power-ups looked at; 0 where a formula needs none. [-] */
  readonly powerUps: number;
  /** Mean wait; at least that much where some never met it. [h] */
  readonly meanH: number;
  /** Within this 95 of 100 power-ups have met it; `null` when more than 5 of 100 never did. [h] */
  readonly p95H: number | null;
  /** Share of power-ups that did not meet it before the horizon, or before the series broke off. [-], 0..1 */
  readonly neverShare: number;
  /** How far it was followed. [h] */
  readonly horizonH: number;
}

/** Whether turning the short way from one heading to the next passes the index. */
export function passesIndex(fromDeg: Degrees, turnDeg: Degrees, indexDeg: Degrees): boolean {
  const way = turnDeg >= 0 ? indexDeg - fromDeg : fromDeg - indexDeg;
  return way - 360 * Math.floor(way / 360) <= Math.abs(turnDeg);
}

/**
 * Mean and 95 % of waits, of which some may have ended without the index.
 *
 * @param waitsH - Time to the index, or to where it was lost sight of. [h], n ≥ 1
 * @param isMet - Whether each of them met the index. [-]
 */
export function waitFigures(
  waitsH: readonly number[],
  isMet: readonly boolean[],
): Pick<IndexWait, 'powerUps' | 'meanH' | 'p95H' | 'neverShare'> {
  const count = waitsH.length;
  const ended = waitsH.map((wait, i) => (isMet[i] ? wait : Infinity)).sort((a, b) => a - b);
  const p95 = ended[Math.ceil(0.95 * count) - 1]!;
  return {
    powerUps: count,
    meanH: waitsH.reduce((sum, wait) => sum + wait, 0) / count,
    p95H: p95 === Infinity ? null : p95,
    neverShare: isMet.filter((met) => !met).length / count,
  };
}
