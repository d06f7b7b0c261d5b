import { degToRad, type Degrees } from '../../units/index.ts';

/** Headings remembered at a time. [-]; more than the positions of any disc that is made here */
const SLOTS = 4096;

const headings = new Float64Array(SLOTS).fill(NaN);

/** Cosine of the heading remembered in each slot: its north part. [-] */
export const northParts = new Float64Array(SLOTS);

/** Sine of the heading remembered in each slot: its east part. [-] */
export const eastParts = new Float64Array(SLOTS);

/**
 * Slot in which north and east part of a heading now stand, for use at once.
 *
 * A disc shows the same few headings millions of times; remembering them halves the time of a mean.
 *
 * @param headingDeg - [deg], 0 ≤ d < 360
 * @returns Place in `northParts` and `eastParts`, until the next call. [-]
 * @source Definition; the same numbers as `Math.cos` and `Math.sin` give.
 * @check src/core/wind/direction/headingSum.test.ts
 */
export function unitVectorSlot(headingDeg: Degrees): number {
  const slot = Math.floor(headingDeg * (SLOTS / 360));
  if (headings[slot] === headingDeg) return slot;
  const turn = degToRad(headingDeg);
  headings[slot] = headingDeg;
  northParts[slot] = Math.cos(turn);
  eastParts[slot] = Math.sin(turn);
  return slot;
}
