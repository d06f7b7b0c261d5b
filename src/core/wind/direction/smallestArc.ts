import { wrapDegrees, type Degrees } from '../../units/index.ts';
import { badReading, noReadings } from '../refusal.ts';

/** An arc of the compass, clockwise from one end to the other. */
export interface Arc {
  /** Counter-clockwise end, in [0, 360). [deg] */
  readonly fromDeg: Degrees;
  /** Clockwise end, in [0, 360). [deg] */
  readonly toDeg: Degrees;
  /** From one end to the other, in [0, 360). [deg] */
  readonly rangeDeg: Degrees;
}

/**
 * The smallest arc that holds every reading: the total spread of direction, and its two extremes.
 *
 * @param headings - Clockwise from true north. [deg], n ≥ 1, in any order
 * @returns The arc; of several equally small the one that begins first from north.
 * @throws `wind/no-readings` when n = 0; `wind/bad-reading` at the first value that is not finite.
 * @source Mardia & Jupp, Directional Statistics, Wiley 2000 (circular range: the turn less the largest gap).
 * @check src/core/wind/direction/smallestArc.test.ts
 */
export function smallestArc(headings: readonly Degrees[]): Arc {
  if (headings.length === 0) throw noReadings('smallestArc(headings)');
  for (const [i, heading] of headings.entries()) {
    if (!Number.isFinite(heading)) {
      throw badReading(`smallestArc(headings[${i}])`, heading, 'a finite angle in degrees');
    }
  }
  const sorted = headings.map(wrapDegrees).sort((a, b) => a - b);
  let begin = 0;
  let largestGap = sorted[0]! + 360 - sorted.at(-1)!;
  for (let i = 1; i < sorted.length; i++) {
    const gap = sorted[i]! - sorted[i - 1]!;
    if (gap > largestGap) [begin, largestGap] = [i, gap];
  }
  const fromDeg = sorted[begin]!;
  const toDeg = sorted[(begin + sorted.length - 1) % sorted.length]!;
  return { fromDeg, toDeg, rangeDeg: 360 - largestGap };
}
